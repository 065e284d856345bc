using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class StarterTests
{
    private static Played Soft(string ratings) =>
        Played.With(
            $"""
            soft starter U1 60 A, control supply 120 V, {ratings}
            motor M1 30 kW
            selector S1 and S2 OFF | ON
            lamp P1 and P2
            MAINS[L1, L2, L3] -> U1 -> M1
            1 -> S2 at ON -> supply U1 -> 2
            1 -> S1 at ON -> input U1 run -> 2
            1 -> NO U1 full speed -> P1 -> 2
            1 -> NC U1 trip -> P2 -> 2
            """
        );

    [Fact]
    public void SoftStarterRampsToFullSpeedAndStops()
    {
        var bench = Soft("three-leg");

        bench.Do("S1=ON")["U1"].Should().Be("off");
        bench.Do("S2=ON")["U1"].Should().Be("ramp");
        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Closed("U1.23-24").Should().BeFalse();
        bench.Do("U1=full").Closed("U1.23-24").Should().BeTrue();
        bench.Do("S1=OFF")["U1"].Should().Be("off");
        bench.Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void ThreeLegStarterLeaksWhenOff()
    {
        var bench = Soft("three-leg");

        bench.Live("M1:U/U1/T1").Should().BeTrue();
        bench.Closed("U1.*sensed2-4/T2").Should().BeFalse();
    }

    [Fact]
    public void TwoLegStarterLeavesOnePoleClosed()
    {
        var bench = Soft("two-leg");

        bench.Closed("U1.*sensed1-2/T1").Should().BeFalse();
        bench.Closed("U1.*sensed2-4/T2").Should().BeTrue();
        bench.Closed("U1.*sensed3-6/T3").Should().BeFalse();
        bench.Do("S1=ON", "S2=ON").Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void InternalBypassTakesOverAtFullSpeed()
    {
        var bench = Soft("internal bypass").Do("S1=ON", "S2=ON");

        bench.Closed("U1.*sensed1-2/T1 bypass").Should().BeFalse();
        bench.Do("U1=full").Closed("U1.*sensed1-2/T1 bypass").Should().BeTrue();
        bench.Closed("U1.*sensed1-2/T1").Should().BeFalse();
        bench.Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void SoftStopRunsDown()
    {
        var bench = Soft("soft stop 10 s").Do("S1=ON", "S2=ON", "U1=full");

        bench.Do("S1=OFF")["U1"].Should().Be("stopping");
        bench.Runs("M1").Should().BeTrue();
        bench.Do("U1=off").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void TripStopsItAndOpensItsContact()
    {
        var bench = Soft("overload class 10 set 50 A").Do("S1=ON", "S2=ON");

        bench.Closed("U1.95-96").Should().BeTrue();
        bench.Do("U1.trip=tripped")["U1"].Should().Be("off");
        bench.Closed("U1.95-96").Should().BeFalse();
        bench.Do("U1.trip=reset").Closed("U1.95-96").Should().BeTrue();
    }

    [Fact]
    public void FailSafeTripContactIsOpenWithoutControlPower()
    {
        Soft("fail-safe trip").Closed("U1.95-96").Should().BeFalse();
        Soft("three-leg").Closed("U1.95-96").Should().BeTrue();
        Soft("fail-safe trip").Do("S2=ON").Closed("U1.95-96").Should().BeTrue();
    }

    [Fact]
    public void OwnProtectionIsThereOnlyWhenSaid()
    {
        Declared.Device("soft starter U1 60 A").Network.Devices[0].Protects.Should().BeEmpty();
        Declared
            .Device("soft starter U1 60 A, overload class 10 set 50 A, phase loss")
            .Network.Devices[0]
            .Protects.Select(p => p.Against)
            .Should()
            .Equal("overload", "phase loss");
    }

    private static Played Drive(string ratings, string lines = "") =>
        Played.With(
            $"""
            disconnect Q1
            drive U1 60 A{ratings}
            motor M1 30 kW
            selector S1 OFF | ON
            MAINS[L1, L2, L3] -> Q1 -> U1 -> M1
            U1:P24 -> S1 at ON -> input U1 run
            {lines}
            """
        );

    [Fact]
    public void DriveRunsTheMotorFromItsOwnSupply()
    {
        var bench = Drive("");

        bench.Runs("M1").Should().BeFalse();
        bench.Do("S1=ON")["U1"].Should().Be("on");
        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Do("S1=OFF").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void DriveKeepsItsTerminalsLiveUntilTheLinkHasDischarged()
    {
        var bench = Drive(", discharge 300 s").Do("U1.charge=charged", "Q1=open");

        bench.Live("U1:L1").Should().BeTrue();
        bench.Live("M1:U/U1/T1").Should().BeTrue();
        bench.Netlist.Supplies.Single(s => s.Store is not null).Store!.Discharge.Should().Be("300 s");
        bench.Do("U1.charge=discharged").Live("M1:U/U1/T1").Should().BeFalse();
    }

    [Fact]
    public void DriveRunsBehindALineReactor()
    {
        var bench = Played.With(
            """
            line reactor R2 3 %
            drive U1 60 A
            motor M1 30 kW
            selector S1 OFF | ON
            MAINS[L1, L2, L3] -> R2 -> U1 -> M1
            U1:P24 -> S1 at ON -> input U1 run
            """
        );

        bench.Do("S1=ON").Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void DriveWantsItsEnableAndTorqueInputs()
    {
        var bench = Drive(
            ", enable input, safe torque off",
            """
            selector S2 and S3 OFF | ON
            U1:P24 -> S2 at ON -> input U1 enable
            U1:P24 -> S3 at ON -> input U1 torque off
            """
        );

        bench.Do("S1=ON")["U1"].Should().Be("off");
        bench.Do("S2=ON")["U1"].Should().Be("off");
        bench.Do("S3=ON")["U1"].Should().Be("on");
        bench.Do("S2=OFF")["U1"].Should().Be("off");
        bench.Do("S2=ON", "S3=OFF")["U1"].Should().Be("off");
    }

    [Fact]
    public void DriveOutputIsNeverInStepWithTheLine()
    {
        var bench = Drive(
                "",
                "contactor K3\nselector S5 OFF | ON\n1 -> S5 at ON -> coil K3 -> 2\nQ1 -> K3 -> M1"
            )
            .Do("S1=ON", "S5=ON");

        bench.Holds(new InShort("U1")).Should().BeFalse();
        bench.Holds(new InShort("U1.output")).Should().BeTrue();
    }

    [Fact]
    public void AutotransformerAndResistorCarryTheStart()
    {
        var bench = Played.With(
            """
            starting resistor R1 2 ohm
            line reactor R2 3 %
            motor M1 10 kW
            MAINS[L1, L2, L3] -> R2 -> R1 -> M1
            """
        );

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Joined("MAINS:L1", "M1:U/U1/T1").Should().BeFalse();
    }

    [Fact]
    public void AutotransformerFeedsFromItsTaps()
    {
        var bench = Played.With(
            """
            autotransformer T2 100 hp, tap 65 %
            contactor K1 coil 120 V
            selector S1 OFF | ON
            motor M1 100 hp
            MAINS[L1, L2, L3] -> T2 -> M1
            T2[U2, V2] -> K1[1, 3]
            K1[2, 4] -> T2[V2, W2]
            1 -> S1 at ON -> coil K1 -> 2
            """
        );

        bench.Do("S1=ON").Runs("M1", Turning.Forward).Should().BeTrue();
    }
}
