using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>
/// Earth faults in a control circuit, by IEC 60204-1 and NFPA 79 clause 9.4.3 and NEC 430.74 (wording from memory,
/// recomputed): a fuse, a stop, a start in parallel with the holding contact, the coil, the overload contact.
/// </summary>
public sealed class EarthFaultTests
{
    private static readonly string[] Wires = ["W1", "W2", "W3", "W4", "X2"];

    [Fact]
    public void Unearthed_one_fault_changes_nothing() =>
        Faults("", "overload last", "M1 runs and S2 released", unstarted: true, most: 1).Should().BeEmpty();

    [Fact]
    public void Unearthed_two_faults_start_it() =>
        Faults("", "overload last", "M1 runs", unstarted: true, most: 2)
            .Should()
            .BeEquivalentTo(["W1 W3", "W2 W3"]);

    [Fact]
    public void Unearthed_two_faults_bridge_the_stop_or_the_overload()
    {
        Faults("", "overload last", "M1 runs and S1 pressed", unstarted: false, most: 2)
            .Should()
            .BeEquivalentTo(["W1 W2", "W1 W3"]);
        Faults("", "overload last", "M1 runs and F2 tripped", unstarted: false, most: 2)
            .Should()
            .BeEquivalentTo(["W4 X2"]);
    }

    [Theory]
    [InlineData("M1 runs", true)]
    [InlineData("M1 runs and S1 pressed", false)]
    [InlineData("M1 runs and F2 tripped", false)]
    public void Earthed_with_every_contact_ahead_of_the_coil_no_fault_starts_or_bridges(
        string what,
        bool unstarted
    ) => Faults(", X2 earthed", "overload first", what, unstarted, most: 1).Should().BeEmpty();

    [Theory]
    [InlineData("W1")]
    [InlineData("W2")]
    [InlineData("W3")]
    public void Earthed_a_fault_on_a_wire_ahead_of_the_coil_blows_the_fuse(string wire) =>
        Faults(", X2 earthed", "overload last", "F4 blown", unstarted: false, most: 1).Should().Contain(wire);

    [Fact]
    public void Earthed_with_the_overload_on_the_return_one_fault_bridges_it() =>
        Faults(", X2 earthed", "overload last", "M1 runs and F2 tripped", unstarted: false, most: 1)
            .Should()
            .BeEquivalentTo(["W4"]);

    [Fact]
    public void Earthed_on_the_wrong_side_one_fault_starts_it_and_the_stop_cannot_drop_it_but_the_overload_can()
    {
        Faults(", X1 earthed", "overload last", "M1 runs", unstarted: true, most: 1)
            .Should()
            .BeEquivalentTo(["W3"]);
        Faults(", X1 earthed", "overload last", "M1 runs and S1 pressed", unstarted: false, most: 1)
            .Should()
            .BeEquivalentTo(["W2", "W3"]);
        Faults(", X1 earthed", "overload last", "M1 runs and F2 tripped", unstarted: false, most: 1)
            .Should()
            .BeEmpty();
    }

    [Fact]
    public void Earthed_on_the_wrong_side_a_fault_behind_the_coil_is_an_unprotected_short()
    {
        var behaviour = Panel(", X1 earthed", "overload last", "M1 runs", most: 1);
        new CutSets(behaviour)
            .Of(behaviour.UnprotectedShort)
            .SelectMany(set => set.Members.Select(WireOf))
            .Should()
            .Contain("W4");
    }

    /// <summary>The wires that touch earth in each minimal set, in order; the empty set as "none".</summary>
    private static IEnumerable<string> Faults(
        string earthing,
        string overload,
        string what,
        bool unstarted,
        int most
    )
    {
        var behaviour = Panel(earthing, overload, what, most);
        var sets = unstarted
            ? new CutSets(
                behaviour,
                t => !(behaviour.Space.Variables[t.Variable].Name == "S2" && t.Cause == Cause.Operator)
            )
            : new CutSets(behaviour);
        var hazard = behaviour.Table.And(behaviour.Quiet, behaviour.Of(behaviour.Netlist.Intents[0].When));
        return sets.Of(hazard)
            .Select(set =>
                set.Members.Count == 0
                    ? "none"
                    : string.Join(' ', set.Members.Select(WireOf).Order(StringComparer.Ordinal))
                        + (set.Uncertain ? " ?" : "")
            );
    }

    private static string WireOf(Variable failure) => failure.Name[..failure.Name.IndexOf('.')];

    private static Behaviour Panel(string earthing, string overload, string what, int most)
    {
        var text = $"""
            panel "Earth faults"
            rules IEC
            system 400 V 3-phase 50 Hz, TN-S
            supply              MAINS 400Y/230 V, available 6 kA
            disconnect          Q1    32 A, lockable
            fuse                F1    three-pole 20 A
            contactor           K1    18 A AC-3, coil 230 V
            overload relay      F2    class 10, range 7 A to 10 A, set 8 A
            motor               M1    4 kW 400 V, 8 A
            control transformer T1    400 V to 230 V, 160 VA{earthing}
            fuse                F4    1 A
            push button         S1    stop
            push button         S2    start
            MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> F2 -> M1
            F1[L1] -> T1:H1
            F1[L2] -> T1:H4
            T1:X1 -> F4 -> node W1
            T1:X2 -> node X2
            {(overload == "overload first" ? "W1 -> F2:95-96 -> S1 -> node W2" : "W1 -> S1 -> node W2")}
            W2 -> ( S2 | NO K1 ) -> node W3
            W3 -> coil K1 -> node W4
            {(overload == "overload first" ? "W4 -> X2" : "W4 -> F2:95-96 -> X2")}
            never {what}
            """;
        var netlist = Described.Netlist(text);
        var earthed = netlist.AllFailures().Where(f => Wires.Any(w => f == $"{w}.touches earth"));
        return Behaviour.Judged(netlist.WithFailures(earthed.ToHashSet()), CancellationToken.None, most);
    }
}
