using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class ProtectionTests
{
    private const string Starter = """
        disconnect Q1 lockable
        contactor K1 coil 120 V
        overload relay F3 class 10, set 10 A
        motor M1 5 kW
        selector S1 OFF | ON
        MAINS[L1, L2, L3] -> Q1 -> K1 -> F3 -> M1
        """;

    [Fact]
    public void DisconnectOpensAllPolesByHand()
    {
        var bench = Played.With("disconnect Q1 lockable\nmotor M1\nMAINS[L1, L2, L3] -> Q1 -> M1");

        bench["Q1"].Should().Be("closed");
        bench.Runs("M1").Should().BeTrue();
        bench.Do("Q1=open").Runs("M1").Should().BeFalse();
        bench.Live("M1:U/U1/T1").Should().BeFalse();
    }

    [Theory]
    [InlineData("disconnect Q1", false, false, 2)]
    [InlineData("disconnect Q1 lockable, visible break", true, true, 1)]
    [InlineData("breaker Q1 lockable", true, false, 1)]
    public void IsolatesAsFarAsItCanBeLocked(string line, bool lockable, bool visible, int rank)
    {
        var isolation = Declared.Device(line).Network.Devices[0].Isolates!;

        isolation.Lockable.Should().Be(lockable);
        isolation.Visible.Should().Be(visible);
        isolation.Rank.Should().Be(rank);
    }

    [Fact]
    public void PulledFuseLinksIsolateAloneUnderIecOnly()
    {
        Rank("fuse F1 lockable", Declared.Iec).Should().Be(1);
        Rank("fuse F1", Declared.Iec).Should().Be(2);
        Rank("fuse F1 lockable", Declared.Nec).Should().BeNull();
    }

    [Fact]
    public void BreakerTripsOnShortAndClosesOnlyThroughOpen()
    {
        var bench = Played.With(
            """
            breaker Q1 16 A, magnetic-only
            selector S1 OFF | FAULT
            MAINS[L1, L2, L3] -> Q1
            Q1[L1] -> S1 at FAULT -> Q1[L2]
            """
        );

        bench.Do("S1=FAULT")["Q1"].Should().Be("tripped");
        bench.Refuses("Q1=closed").Should().BeTrue();
        bench.Do("S1=OFF", "Q1=open", "Q1=closed")["Q1"].Should().Be("closed");
    }

    [Fact]
    public void ThermalMagneticBreakerTripsWhileItCarries()
    {
        var bench = Played.With("breaker Q1 16 A\nmotor M1\nMAINS[L1, L2, L3] -> Q1 -> M1");

        bench.Do("Q1=tripped").Runs("M1").Should().BeFalse();
        var idle = Played.With("breaker Q1 16 A, magnetic-only\nmotor M1\nMAINS[L1, L2, L3] -> Q1 -> M1");
        idle.Refuses("Q1=tripped").Should().BeTrue();
    }

    [Fact]
    public void OnlyABreakerMadeForItProtectsAMotor()
    {
        Declared.Device("breaker Q1 16 A").Network.Devices[0].Protects.Should().BeEmpty();
        Declared
            .Device("breaker Q1 16 A, motor protection set 9 A")
            .Network.Devices[0]
            .Protects.Should()
            .ContainSingle(p => p.Against == "overload");
    }

    [Fact]
    public void ShortBlowsTheFusesOfItsOwnPoles()
    {
        var bench = Played.With(
            """
            fuse F1 three-pole 16 A, interrupting 50 kA
            selector S1 OFF | FAULT
            MAINS[L1, L2, L3] -> F1
            F1[2] -> S1 at FAULT -> PE
            """
        );

        bench.Do("S1=FAULT");
        bench["F1.link1"].Should().Be("blown");
        bench["F1.link2"].Should().Be("whole");
        bench["F1.link3"].Should().Be("whole");
        bench.Do("S1=OFF", "F1.link1=whole")["F1.link1"].Should().Be("whole");
    }

    [Fact]
    public void FusedDisconnectBlowsAndOpens()
    {
        var bench = Played.With(
            """
            fused disconnect Q1 100 A, fuses 80 A, interrupting 100 kA, lockable
            selector S1 OFF | FAULT
            MAINS[L1, L2, L3] -> Q1
            Q1[2] -> S1 at FAULT -> Q1[4]
            """
        );

        bench.Do("S1=FAULT");
        new[] { bench["Q1.link1"], bench["Q1.link2"] }.Should().Contain("blown");
        bench["Q1.link3"].Should().Be("whole");
        bench.Do("Q1=open").Closed("Q1.1/L1-*clip1").Should().BeFalse();
    }

    [Fact]
    public void OverloadTripsWhileItsHeatersCarryAndLatches()
    {
        var bench = Played.With(Starter + "\n1 -> S1 at ON -> NC F3 -> coil K1 -> 2");

        bench.Do("S1=ON").Runs("M1").Should().BeTrue();
        bench.Holds(new Carries("F3.1/L1-2/T1")).Should().BeTrue();
        bench.Do("F3=tripped").Runs("M1").Should().BeFalse();
        bench.Closed("F3.95-96").Should().BeFalse();
        bench.Closed("F3.97-98").Should().BeTrue();
        bench["F3"].Should().Be("tripped");
        bench.Do("F3=reset").Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void OverloadRemembersThatItHasCarried()
    {
        var bench = Played.With(Starter + "\n1 -> S1 at ON -> NC F3 -> coil K1 -> 2");
        var trip = bench.Netlist.Variables.Single(v => v.Name == "F3").Moves.Single(m => m.By == Mover.Trip);

        bench.Holds(trip.When).Should().BeFalse();
        bench.Do("S1=ON").Holds(trip.When).Should().BeTrue();
        bench.Do("F3.memory=warm", "S1=OFF").Holds(trip.When).Should().BeTrue();
        bench.Do("F3.memory=cold").Holds(trip.When).Should().BeFalse();
    }

    [Fact]
    public void OverloadMayBeServedByCurrentTransformers()
    {
        var bench = Played.With(
            """
            contactor K1 coil 120 V
            current transformer T5 100 A to 5 A
            overload relay F3 electronic, class 10, set 4 A, current transformers T5
            motor M1 50 kW
            selector S1 OFF | ON
            MAINS[L1, L2, L3] -> K1 -> T5 -> M1
            1 -> S1 at ON -> NC F3 -> coil K1 -> 2
            """
        );
        var trip = bench.Netlist.Variables.Single(v => v.Name == "F3").Moves.Single(m => m.By == Mover.Trip);

        bench.Holds(trip.When).Should().BeFalse();
        bench.Do("S1=ON").Holds(trip.When).Should().BeTrue();
        bench.Do("F3=tripped").Runs("M1").Should().BeFalse();
        bench
            .Netlist.Devices.Single(d => d.Tag == "F3")
            .Protects.Should()
            .OnlyContain(p => p.Elements.Contains("T5.1/L1-2/T1") && p.Elements.Count == 3);
    }

    [Fact]
    public void SequenceRelayIsInOnlyInOrder()
    {
        Relay("MAINS[L1, L2, L3] -> B1", "phase sequence")["B1"].Should().Be("in");
        Relay("MAINS[L1, L3, L2] -> B1", "phase sequence")["B1"].Should().Be("out");
        Relay("MAINS[L1, L3, L2] -> B1", "phase loss")["B1"].Should().Be("in");
    }

    [Fact]
    public void PhaseRelayDropsWithTheSupplyAndMayDropWithAPhase()
    {
        var bench = Relay("MAINS[L1, L2, L3] -> Q1 -> B1", "phase loss", "disconnect Q1");

        bench.Do("Q1=open")["B1"].Should().Be("out");
        bench.Do("Q1=closed", "MAINS.L3=lost");
        bench
            .Netlist.Variables.Single(v => v.Name == "B1")
            .Moves.Single(m => m.To == "out")
            .May.Should()
            .NotBe(Expression.False);
        bench.Do("Q1=open", "Q1=closed")["B1"].Should().Be("out");
    }

    [Fact]
    public void EarthFaultRelayTripsAndStandsAsTrippedWithoutItsSupply()
    {
        var bench = Played.With(
            """
            protection relay F5 earth fault, auxiliary supply 120 V
            relay K0 coil 120 V
            selector S1 OFF | ON
            1 -> S1 at ON -> supply F5 -> 2
            1 -> NO F5 -> coil K0 -> 2
            MAINS[L1, L2, L3] -> F5
            """
        );

        bench["K0"].Should().Be("out");
        bench.Do("S1=ON")["K0"].Should().Be("in");
        bench.Do("F5=tripped")["K0"].Should().Be("out");
        bench.Do("F5=reset")["K0"].Should().Be("in");
    }

    private static int? Rank(string line, PanelFacts facts) =>
        Declared.Device(line, facts).Network.Devices[0].Isolates?.Rank;

    private static Played Relay(string chain, string flags, string more = "") =>
        Played.With($"{more}\nprotection relay B1 400 V, {flags}\nlamp P1\n{chain}\n1 -> NO B1 -> P1 -> 2");
}
