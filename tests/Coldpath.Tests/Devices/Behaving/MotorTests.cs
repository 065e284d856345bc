using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class MotorTests
{
    [Theory]
    [InlineData("M1", Turning.Forward)]
    [InlineData("M1[V, U, W]", Turning.Reverse)]
    [InlineData("M1[T2, T3, T1]", Turning.Forward)]
    public void TurnsAsItIsFed(string motor, Turning turns) =>
        Played.With($"motor M1 5 kW\nMAINS[L1, L2, L3] -> {motor}").Runs("M1", turns).Should().BeTrue();

    [Theory]
    [InlineData("M1[U2, V2, W2]", true)]
    [InlineData("M1[T4, T5, T6]", true)]
    public void SixLeadsRunInStar(string star, bool runs)
    {
        var bench = Played.With(
            $"""
            motor M1 six-lead 30 kW
            contactor K2 coil 120 V
            selector S1 OFF | ON
            MAINS[L1, L2, L3] -> M1[U1, V1, W1]
            {star} -> K2
            K2[2, 4] -> K2[4, 6]
            1 -> S1 at ON -> coil K2 -> 2
            """
        );

        bench.Runs("M1").Should().BeFalse();
        bench.Do("S1=ON").Runs("M1", Turning.Forward).Should().Be(runs);
    }

    /// <summary>IEC and NEMA practice: L1 on T1 and T6, L2 on T2 and T4, L3 on T3 and T5.</summary>
    [Theory]
    [InlineData("M1[W2, U2, V2]", Turning.Forward)]
    [InlineData("M1[T6, T4, T5]", Turning.Forward)]
    [InlineData("M1[V2, W2, U2]", Turning.Forward)]
    public void SixLeadsRunInDelta(string ends, Turning turns)
    {
        var bench = Played.With(
            $"""
            motor M1 six-lead 30 kW
            MAINS[L1, L2, L3] -> M1[U1, V1, W1]
            MAINS[L1, L2, L3] -> {ends}
            """
        );

        bench.Runs("M1", turns).Should().BeTrue();
        bench.Holds(new InShort("MAINS")).Should().BeFalse();
    }

    [Fact]
    public void SixLeadsWithBothEndsOnTheSamePhasesDoNotRun() =>
        Played
            .With(
                """
                motor M1 six-lead 30 kW
                MAINS[L1, L2, L3] -> M1[U1, V1, W1]
                MAINS[L1, L2, L3] -> M1[U2, V2, W2]
                """
            )
            .Runs("M1")
            .Should()
            .BeFalse();

    [Theory]
    [InlineData("low", "M1[1U, 1V, 1W]")]
    [InlineData("high", "M1[2U, 2V, 2W]")]
    [InlineData("low", "M1[T1, T2, T3]")]
    [InlineData("high", "M1[T11, T12, T13]")]
    public void TwoWindingsHaveASpeedEach(string mode, string terminals)
    {
        var bench = Played.With(
            $"motor M1 two-speed 4 kW, 1450 rpm, low speed 720 rpm\nMAINS[L1, L2, L3] -> {terminals}"
        );
        var load = bench.Load("M1");

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        load.Modes.Single(m => m.Name == mode).Speed.Should().Be(mode == "low" ? 720 : 1450);
        bench.Live("M1:1U/T1").Should().BeTrue("all windings in one frame are coupled");
        bench.Live("M1:2U/T11").Should().BeTrue();
    }

    [Fact]
    public void TappedWindingRunsLowInDeltaAndHighInTwoStars()
    {
        Played
            .With("motor M1 two-speed, tapped winding, 6 kW\nMAINS[L1, L2, L3] -> M1[1U, 1V, 1W]")
            .Runs("M1", Turning.Forward)
            .Should()
            .BeTrue();
        Played
            .With("motor M1 two-speed, tapped winding, 6 kW\nMAINS[L1, L2, L3] -> M1[2U, 2V, 2W]")
            .Runs("M1")
            .Should()
            .BeFalse();
        var star = "wire 9: M1:1U, M1:1V, M1:1W";
        Played
            .With($"motor M1 two-speed, tapped winding, 6 kW\nMAINS[L1, L2, L3] -> M1[2U, 2V, 2W]\n{star}")
            .Runs("M1", Turning.Forward)
            .Should()
            .BeTrue();
        Played
            .With($"motor M1 two-speed, tapped winding, 6 kW\nMAINS[L1, L2, L3] -> M1[T6, T4, T5]\n{star}")
            .Runs("M1", Turning.Forward)
            .Should()
            .BeTrue();
    }

    /// <summary>Connections of a dual-voltage winding, NEMA MG 1 part 2 (from memory).</summary>
    [Theory]
    [InlineData("wire 4: M1:T4, M1:T7|wire 5: M1:T5, M1:T8|wire 6: M1:T6, M1:T9", true)]
    [InlineData(
        "wire 1: M1:T1, M1:T7|wire 2: M1:T2, M1:T8|wire 3: M1:T3, M1:T9|wire 4: M1:T4, M1:T5, M1:T6",
        true
    )]
    [InlineData("wire 4: M1:T4, M1:T7|wire 5: M1:T5, M1:T8", false)]
    public void NineLeadsRunAsJoined(string wires, bool runs) => Runs("nine-lead", wires).Should().Be(runs);

    [Theory]
    [InlineData(
        "wire 4: M1:T4, M1:T7|wire 5: M1:T5, M1:T8|wire 6: M1:T6, M1:T9|wire 10: M1:T10, M1:T11, M1:T12",
        true
    )]
    [InlineData(
        "wire 4: M1:T4, M1:T7|wire 5: M1:T5, M1:T8|wire 6: M1:T6, M1:T9|wire 1: M1:T1, M1:T12|wire 2: M1:T2, M1:T10|wire 3: M1:T3, M1:T11",
        true
    )]
    [InlineData(
        "wire 1: M1:T1, M1:T7, M1:T6, M1:T12|wire 2: M1:T2, M1:T8, M1:T4, M1:T10|wire 3: M1:T3, M1:T9, M1:T5, M1:T11",
        true
    )]
    [InlineData("wire 4: M1:T4, M1:T7|wire 5: M1:T5, M1:T8|wire 6: M1:T6, M1:T9", false)]
    public void TwelveLeadsRunAsJoined(string wires, bool runs) =>
        Runs("twelve-lead", wires).Should().Be(runs);

    [Fact]
    public void PartWindingRunsOnEitherHalf() => Runs("six-lead part winding,", "").Should().BeTrue();

    [Fact]
    public void SinglePhaseMotorRunsBetweenTwoConductors()
    {
        var bench = Played.With("motor M1 1-phase 1 kW\nMAINS[L1, N] -> M1");

        bench.Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void TurningMagnetsKeepTheTerminalsLive()
    {
        var bench = Played.With(
            "disconnect Q1\nmotor M1 permanent magnet, 5 kW 400 V\nMAINS[L1, L2, L3] -> Q1 -> M1"
        );

        bench.Do("M1=turning", "Q1=open").Live("M1:U/U1/T1").Should().BeTrue();
        bench.Do("M1=still").Live("M1:U/U1/T1").Should().BeFalse();
        bench.Netlist.Supplies.Single(s => s.Store is not null).Store!.Discharge.Should().BeNull();
    }

    [Fact]
    public void TwoPhasesDoNotRunAThreePhaseMotor()
    {
        var bench = Played.With("motor M1 5 kW\nMAINS[L1, L2] -> M1[U, V]");

        bench.Runs("M1").Should().BeFalse();
        bench.Live("M1:W/W1/T3").Should().BeTrue();
    }

    private static bool Runs(string leads, string wires) =>
        Played
            .With($"motor M1 {leads} 30 kW\nMAINS[L1, L2, L3] -> M1[T1, T2, T3]\n{wires.Replace('|', '\n')}")
            .Runs("M1", Turning.Forward);
}
