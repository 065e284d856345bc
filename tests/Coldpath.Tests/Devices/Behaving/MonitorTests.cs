using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>What watches, and opens or signals when something is wrong.</summary>
public class MonitorTests
{
    [Theory]
    [InlineData("L1, L2, L3", "in")]
    [InlineData("L2, L3, L1", "in")]
    [InlineData("L1, L3, L2", "out")]
    public void PhaseSequenceRelayIsInOnlyInOrder(string phases, string relay)
    {
        var bench = Played.With(
            $"""
            disconnect Q1
            phase-sequence relay B1 400 V
            lamp P1
            MAINS[{phases}] -> Q1 -> B1
            1 -> NO B1 -> P1 -> 2
            """
        );

        bench["B1"].Should().Be(relay);
        bench.Runs("P1").Should().Be(relay == "in");
        bench.Do("Q1=open")["B1"].Should().Be("out");
    }

    [Fact]
    public void ThermistorRelayTripsOnHeatAndOnABrokenWireAndLatches()
    {
        var bench = Played.With(
            """
            thermistor relay F7 auxiliary supply 120 V
            thermistor B7 130 degC
            selector S1 WHOLE | BROKEN, rest WHOLE
            relay K0 coil 120 V
            1 -> supply F7 -> 2
            F7:T1 -> B7 -> S1 at WHOLE -> F7:T2
            1 -> NO F7 -> coil K0 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("B7=hot")["K0"].Should().Be("out");
        bench.Refuses("F7=reset").Should().BeTrue();
        bench.Do("B7=cool")["K0"].Should().Be("out");
        bench.Do("F7=reset")["K0"].Should().Be("in");
        bench.Do("S1=BROKEN")["K0"].Should().Be("out");
        bench.Do("S1=WHOLE", "F7=reset", "EXT=absent").Closed("F7.11-14").Should().BeFalse();
    }

    [Fact]
    public void ThermistorRelayMayResetByItself() =>
        Played
            .With(
                """
                thermistor relay F7 auxiliary supply 120 V, automatic reset
                thermistor B7
                1 -> supply F7 -> 2
                F7:T1 -> B7 -> F7:T2
                """
            )
            .Do("B7=hot", "B7=cool", "F7=reset")["F7"]
            .Should()
            .Be("reset");

    [Fact]
    public void ResidualCurrentDeviceTripsAtAnyTimeButOnNoShort()
    {
        var bench = Played.With(
            """
            residual-current device F1 40 A, sensitivity 30 mA
            motor M1
            MAINS -> F1
            F1[2, 4, 6] -> M1
            """
        );

        bench.Runs("M1").Should().BeTrue();
        bench.Do("F1=tripped").Runs("M1").Should().BeFalse();
        bench.Live("M1:U/U1/T1").Should().BeFalse();
        bench.Do("F1=open", "F1=closed").Runs("M1").Should().BeTrue();
        var device = bench.Netlist.Devices.Single(d => d.Tag == "F1");
        device.Protects.Single().Against.Should().Be("earth fault");
        device.OpensOnShort.Should().BeEmpty();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void EarthFaultRelayStandsWithoutItsSupplyAsItIsMade(bool failSafe)
    {
        var bench = Played.With(
            $"""
            earth-fault relay F5 300 mA, auxiliary supply 120 V{(failSafe ? ", fail-safe trip" : "")}
            selector S1 ON | GONE, rest ON
            lamp P1
            motor M1
            1 -> S1 at ON -> supply F5 -> 2
            1 -> NC F5 -> P1 -> 2
            MAINS[L1, L2, L3] -> F5 -> M1
            """
        );

        bench.Runs("P1").Should().Be(!failSafe);
        bench.Do("F5=tripped").Runs("P1").Should().Be(failSafe);
        bench.Runs("M1").Should().BeTrue("it opens nothing itself");
        bench.Do("F5=reset", "S1=GONE").Runs("P1").Should().BeTrue();
        bench.Refuses("F5=tripped").Should().BeTrue();
    }

    [Fact]
    public void InsulationMonitorTiesNothingToEarth()
    {
        var bench = Played.With(
            """
            insulation monitor F6 50 kohm, auxiliary supply 120 V
            lamp P1
            MAINS[L1] -> F6 -> PE
            1 -> supply F6 -> 2
            1 -> NO F6 -> P1 -> 2
            """,
            "500 V 3-phase 50 Hz, IT"
        );

        bench.Runs("P1").Should().BeTrue();
        bench.Live("MAINS:L1").Should().BeTrue();
        bench.Do("F6=tripped").Runs("P1").Should().BeFalse();
        bench.Do("F6=reset").Runs("P1").Should().BeTrue();
        bench.Do("EXT=absent").Closed("F6.11-14").Should().BeFalse();
    }

    [Fact]
    public void SurgeArresterIsNoShortUntilItFails()
    {
        var bench = Played.With(
            """
            surge arrester F9 275 V, signal contact
            lamp P1
            MAINS[L1, L2, L3] -> F9[L1, L2, L3]
            F9:PE1 -> PE
            1 -> NC F9 -> P1 -> 2
            """
        );
        var shorted = bench.Netlist.Variables.Single(v => v.Name == "F9.shorted1");

        shorted.Class.Should().Be(FailureClass.Semiconductor);
        bench.Holds(new InShort("MAINS")).Should().BeFalse();
        bench.Runs("P1").Should().BeTrue();
        bench.Do("F9=spent").Runs("P1").Should().BeFalse();
        bench
            .Netlist.Elements.Where(e => e.Type == ElementType.Fault && e.Device == "F9")
            .Should()
            .HaveCount(3)
            .And.OnlyContain(e => e.B == "F9:PE1" || e.B == bench.Netlist.Earth);
    }
}
