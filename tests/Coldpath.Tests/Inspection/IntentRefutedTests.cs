using Coldpath.Findings;
using FluentAssertions;

namespace Coldpath.Tests.Inspection;

public sealed class IntentRefutedTests
{
    /// <summary>Two contactors side by side, always in together.</summary>
    private const string Twins = """
        panel "Twins"
          rules  IEC
          system 400 V 3-phase 50 Hz, TN-S

        supply         MAINS     400Y/230 V, available 10 kA
        breaker        Q1        63 A, lockable, interrupting 25 kA
        contactor      K1 and K2 40 A AC-3, coil 230 V
        overload relay F2        class 10, range 20 A to 40 A, set 30 A
        motor          M1        15 kW 400 V, 30 A
        selector       S1        ON | OFF

        MAINS[L1, L2, L3] -> Q1 -> ( K1 | K2 ) -> F2 -> M1
        Q1[L1] -> rail 1
        MAINS[N] -> rail 2
        rung 1  1 -> S1 at ON -> F2:95-96 -> ( coil K1 | coil K2 ) -> 2

        """;

    [Fact]
    public void A_way_that_another_always_shares_is_told_from_one_that_never_conducts() =>
        Messages(Twins + "can M1 run via K1")
            .Should()
            .Equal(
                "not so: can M1 run via K1: no state is reached in which M1 runs and would not without K1"
            );

    [Fact]
    public void Of_several_devices_each_must_be_needed() =>
        Messages(Twins + "can M1 run via K1 and K2")
            .Should()
            .Equal(
                "not so: can M1 run via K1 and K2: "
                    + "no state is reached in which M1 runs and would not without each of K1 and K2"
            );

    [Fact]
    public void A_way_that_is_needed_is_so() => Messages(Twins + "can M1 run via F2").Should().BeEmpty();

    [Fact]
    public void Other_sentences_speak_for_themselves() =>
        Messages(Twins + "never K1 closed").Should().Equal("not so: never K1 closed");

    private static IEnumerable<string> Messages(string text) =>
        Workbench
            .Check(new SourceText("twins.panel", text), CancellationToken.None)
            .Findings.Where(f => f.Name == "intent-refuted")
            .Select(f => f.Message);
}
