using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>Failures that a kind has of its own.</summary>
public class FailingTests
{
    [Fact]
    public void ATimerElapsesAtOnce()
    {
        var bench = Played.Failing(
            ["K4.early"],
            "selector S1 OFF | ON\non-delay timer K4 10 s, coil 120 V\n1 -> S1 at ON -> coil K4 -> 2"
        );

        bench.Do("S1=ON")["K4"].Should().Be("out");
        bench.Do("S1=OFF", "K4.early=yes", "S1=ON")["K4"].Should().Be("in");
    }

    [Fact]
    public void AnOffDelayReturnsAtOnce()
    {
        var bench = Played.Failing(
            ["K4.early"],
            "selector S1 OFF | ON\noff-delay timer K4 10 s, coil 120 V\n1 -> S1 at ON -> coil K4 -> 2"
        );

        bench.Do("S1=ON", "S1=OFF")["K4"].Should().Be("in");
        bench.Do("S1=ON", "K4.early=yes", "S1=OFF")["K4"].Should().Be("out");
    }

    [Fact]
    public void APowerSupplyGivesNothingOutAndSaysSo()
    {
        var bench = Played.Failing(
            ["G3.dead"],
            """
            power supply G3 24 V DC, PELV, minus earthed, ready contact
            lamp P1
            lamp P2
            MAINS[L1] -> G3:L
            MAINS[N] -> G3:N
            G3:V+ -> P1 -> G3:V-
            1 -> NO ready G3 -> P2 -> 2
            """
        );

        bench.Runs("P1").Should().BeTrue();
        bench.Runs("P2").Should().BeTrue();
        bench.Do("G3.dead=yes").Runs("P1").Should().BeFalse();
        bench.Runs("P2").Should().BeFalse();
    }

    [Fact]
    public void ATransformerWithAnOpenWindingGivesNothingOut()
    {
        var bench = Played.Failing(
            ["T1.burnt"],
            """
            control transformer T1 400 V to 24 V, X2 earthed
            lamp P1
            MAINS[L1] -> T1:H1
            MAINS[L2] -> T1:H4
            T1:X1 -> P1 -> T1:X2
            """
        );

        bench.Runs("P1").Should().BeTrue();
        bench.Do("T1.burnt=yes").Runs("P1").Should().BeFalse();
    }

    [Theory]
    [InlineData("phase-sequence relay B1 400 V")]
    [InlineData("protection relay B1 400 V, phase loss")]
    [InlineData("protection relay B1 400 V, unbalance")]
    public void AMonitorStaysInWithAPhaseLost(string line)
    {
        var bench = Played.Failing(["B1.deaf"], $"{line}\nMAINS[L1, L2, L3] -> B1");

        bench.Do("MAINS.L3=lost")["B1"].Should().Be("out");
        bench.Do("MAINS.L3=there", "B1.deaf=yes", "MAINS.L3=lost")["B1"].Should().Be("in");
    }

    [Fact]
    public void ASoftStarterRunsOnUntilItsControlSupplyGoes()
    {
        var bench = Played.Failing(
            ["U1.runs-on"],
            """
            soft starter U1 16 A, three-leg, control supply 120 V
            motor M1
            selector S1 OFF | ON
            selector S2 ON | GONE, rest ON
            MAINS[L1, L2, L3] -> U1 -> M1
            1 -> S2 at ON -> supply U1 -> 2
            1 -> S1 at ON -> input run U1 -> 2
            """
        );

        bench.Do("S1=ON", "U1.runs-on=yes", "S1=OFF").Runs("M1").Should().BeTrue();
        bench.Do("S2=GONE").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void ADriveRunsOnUntilItsTorqueIsTakenSafelyOff()
    {
        var bench = Played.Failing(
            ["U1.runs-on"],
            """
            drive U1 16 A, safe torque off, discharge 300 s
            motor M1
            selector S1 OFF | ON
            selector S2 ON | GONE, rest ON
            MAINS[L1, L2, L3] -> U1 -> M1
            U1:P24 -> S1 at ON -> U1:IN1
            U1:P24 -> S2 at ON -> U1:STO
            """
        );

        bench.Do("S1=ON", "U1.runs-on=yes", "S1=OFF").Runs("M1").Should().BeTrue();
        bench.Do("S2=GONE").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void ABrakeStaysReleasedOrIsNotReleased()
    {
        var bench = Played.Failing(
            ["Q8.sticks", "Q8.burnt"],
            "brake Q8 120 V\nselector S1 OFF | ON\n1 -> S1 at ON -> Q8 -> 2"
        );

        bench.Do("S1=ON")["Q8"].Should().Be("released");
        bench.Do("S1=OFF")["Q8"].Should().Be("set");
        bench.Do("S1=ON", "Q8.sticks=yes", "S1=OFF")["Q8"].Should().Be("released");
        Played
            .Failing(["Q8.burnt"], "brake Q8 120 V\n1 -> Q8 -> 2")
            .Do("Q8.burnt=yes")["Q8"]
            .Should()
            .Be("set");
    }

    [Fact]
    public void ABrakeRectifierGivesNothingOut()
    {
        var bench = Played.Failing(
            ["T5.dead"],
            """
            brake rectifier T5 400 V to 180 V
            brake Q8 180 V DC
            MAINS[L1, L2] -> T5
            T5:3 -> T5:4
            T5:5 -> Q8 -> T5:6
            """
        );

        bench["Q8"].Should().Be("released");
        bench.Runs("Q8").Should().BeTrue();
        bench.Do("T5.dead=yes").Runs("Q8").Should().BeFalse();
    }

    [Fact]
    public void ACapacitorShortedBlowsItsFuses()
    {
        var bench = Played.Failing(
            ["C1.shorted2"],
            "fuse F1 three-pole 20 A\ncapacitor C1 12 kvar 400 V\nMAINS[L1, L2, L3] -> F1 -> C1"
        );

        bench.Do("C1.shorted2=yes");
        new[] { bench["F1.link1"], bench["F1.link2"], bench["F1.link3"] }
            .Count(link => link == "blown")
            .Should()
            .Be(1);
    }

    [Fact]
    public void ACapacitorWithoutItsResistorKeepsItsCharge()
    {
        var bench = Played.Failing(
            ["C1.undischarged"],
            "disconnect Q1\ncapacitor C1 12 kvar 400 V\nMAINS[L1, L2, L3] -> Q1 -> C1"
        );

        bench.Do("C1=charged", "Q1=open", "C1=discharged", "Q1=closed", "C1=charged");
        bench.Do("C1.undischarged=yes", "Q1=open").Refuses("C1=discharged").Should().BeTrue();
    }

    [Fact]
    public void ASafetyRelayNeedsTwoWeldsToFail()
    {
        const string Lines = """
            safety relay K5 120 V, reset automatic
            selector S1 STOP | RUN
            lamp P1
            1 -> supply K5 -> 2
            K5:S11 -> S1 at RUN:13-14 -> K5:S12
            K5:S21 -> S1 at RUN:23-24 -> K5:S22
            1 -> NO K5 -> P1 -> 2
            """;
        var one = Played.Failing(["K5.weld1"], Lines).Do("S1=RUN", "K5.weld1=yes", "S1=STOP");
        one.Runs("P1").Should().BeFalse();
        one.Do("S1=RUN").Runs("P1").Should().BeFalse("it does not start again with a relay welded");

        Played
            .Failing(["K5.weld1", "K5.weld2"], Lines)
            .Do("S1=RUN", "K5.weld1=yes", "K5.weld2=yes", "S1=STOP")
            .Runs("P1")
            .Should()
            .BeTrue();
    }

    [Fact]
    public void ADoorSwitchDefeatedDoesNotSeeTheDoor()
    {
        var bench = Played.Failing(
            ["B8.defeated"],
            "door switch B8 positive opening\nlamp P1\n1 -> B8 -> P1 -> 2"
        );

        bench.Do("B8=ajar").Runs("P1").Should().BeFalse();
        bench.Do("B8.defeated=yes").Runs("P1").Should().BeTrue();
    }

    [Fact]
    public void ALatchJams()
    {
        var bench = Played.Failing(
            ["K1.jams"],
            """
            latched contactor K1 two-pole 32 A, coil 120 V
            selector S1 OFF | ON
            selector S2 OFF | ON
            1 -> S1 at ON -> set K1 -> 2
            1 -> S2 at ON -> reset K1 -> 2
            """
        );

        bench.Do("S1=ON", "S1=OFF", "S2=ON")["K1"].Should().Be("out");
        bench.Do("S2=OFF", "S1=ON", "S1=OFF", "K1.jams=yes", "S2=ON")["K1"].Should().Be("in");
    }

    [Fact]
    public void BackfeedProtectionStaysClosed()
    {
        var bench = Played.Failing(
            ["G2.backfeeds"],
            """
            disconnect Q1
            ups G2 230 V, battery 48 V DC, backfeed protection
            lamp P1
            MAINS[L1] -> Q1[L1] -> G2:L
            MAINS[N] -> G2:N
            G2:UL -> P1 -> G2:UN
            """
        );

        bench.Do("Q1=open").Live("G2:L").Should().BeFalse();
        bench.Do("G2.backfeeds=yes").Live("G2:L").Should().BeTrue();
    }

    [Fact]
    public void ABreakerDoesNotTrip()
    {
        var bench = Played.Failing(
            ["Q1.sticks"],
            """
            breaker Q1 50 A, shunt trip 120 V
            selector S2 OFF | ON
            motor M1
            MAINS[L1, L2, L3] -> Q1 -> M1
            1 -> S2 at ON -> shunt trip Q1 -> 2
            """
        );

        bench.Do("Q1.sticks=yes", "S2=ON").Runs("M1").Should().BeTrue();
        bench.Do("Q1=open").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void AThermistorRelayDoesNotTrip()
    {
        var bench = Played.Failing(
            ["F7.sticks"],
            """
            thermistor relay F7 auxiliary supply 120 V
            thermistor B7
            1 -> supply F7 -> 2
            F7:T1 -> B7 -> F7:T2
            """
        );

        bench.Do("F7.sticks=yes", "B7=hot")["F7"].Should().Be("reset");
    }

    [Fact]
    public void ATransferSwitchInClosedTransitionHasBothSuppliesOnTheWay()
    {
        var bench = Played.With(
            """
            generator G1 400 V, synchronised with MAINS
            transfer switch Q9 manual, transition closed
            motor M1
            MAINS[L1, L2, L3] -> Q9[N1, N2, N3]
            G1[L1, L2, L3] -> Q9[E1, E2, E3]
            Q9 -> M1
            """
        );

        bench.Joined("MAINS:L1", "G1:L1").Should().BeFalse();
        bench.Do("Q9=BOTH").Joined("MAINS:L1", "G1:L1").Should().BeTrue();
        bench.Do("Q9=EMERGENCY").Joined("MAINS:L1", "G1:L1").Should().BeFalse();
        bench.Runs("M1").Should().BeTrue();
    }
}
