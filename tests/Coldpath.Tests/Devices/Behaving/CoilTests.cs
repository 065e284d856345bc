using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class CoilTests
{
    private static readonly Expression Out = new VariableIs("armature", "out");

    [Fact]
    public void ContactorPullsAtItsVoltageAndDropsWithoutIt()
    {
        var bench = Played.With(
            """
            contactor K1 coil 120 V
            selector S1 OFF | ON
            1 -> S1 at ON -> coil K1 -> 2
            """
        );

        bench["K1"].Should().Be("out");
        bench.Closed("K1.1/L1-2/T1").Should().BeFalse();
        bench.Do("S1=ON")["K1"].Should().Be("in");
        bench.Closed("K1.5/L3-6/T3").Should().BeTrue();
        bench.Do("S1=OFF")["K1"].Should().Be("out");
    }

    [Theory]
    [InlineData("230 V")]
    [InlineData("24 V")]
    public void ContactorNeedNotPullAtAnotherVoltage(string rated)
    {
        var bench = Played.With(
            $"""
            contactor K1 coil {rated}
            selector S1 OFF | ON
            1 -> S1 at ON -> coil K1 -> 2
            """
        );

        bench.Do("S1=ON")["K1"].Should().Be("out");
    }

    [Fact]
    public void ContactorWithoutRatedVoltagePullsAtAny() =>
        Played
            .With(
                """
                contactor K1
                selector S1 OFF | ON
                1 -> S1 at ON -> coil K1 -> 2
                """
            )
            .Do("S1=ON")["K1"]
            .Should()
            .Be("in");

    /// <summary>IEC 60947-4-1 annex F: no mirror contact is closed while any main pole is, welded or not.</summary>
    [Fact]
    public void WeldedPoleKeepsTheMirrorContactOpen()
    {
        var mirror = Declared.Device("contactor K1 coil 120 V, mirror contacts");
        var plain = Declared.Device("contactor K1 coil 120 V");
        var welded = Expression.AnyOf(
            new VariableIs("weld1", "yes"),
            new VariableIs("weld2", "yes"),
            new VariableIs("weld3", "yes")
        );

        Break(mirror).Closed.Should().Be(Expression.AllOf(Out, Expression.Negate(welded)));
        Break(mirror).Welds.Should().BeFalse();
        Break(plain).Closed.Should().Be(Out);
        Break(plain).Welds.Should().BeTrue();
    }

    [Fact]
    public void MechanicalInterlockBlocksTheSecondContactor()
    {
        var bench = Played.With(
            """
            contactor K1 and K2 coil 120 V
            mechanical interlock MI1 between K1 and K2
            selector S1 and S2 OFF | ON
            1 -> S1 at ON -> coil K1 -> 2
            1 -> S2 at ON -> coil K2 -> 2
            """
        );

        bench.Do("S1=ON", "S2=ON");
        bench["K1"].Should().Be("in");
        bench["K2"].Should().Be("out");
        bench.Do("S1=OFF")["K2"].Should().Be("in");
    }

    [Fact]
    public void LinkedRelayNeverClosesBothSorts()
    {
        var bench = Played.With(
            """
            relay K0 coil 120 V, linked contacts
            selector S1 OFF | ON
            1 -> S1 at ON -> coil K0 -> 2
            lamp P1 and P2
            1 -> NO K0:13-14 -> P1 -> 2
            1 -> NC K0:21-22 -> P2 -> 2
            """
        );

        bench.Closed("K0.21-22").Should().BeTrue();
        bench.Do("S1=ON").Closed("K0.21-22").Should().BeFalse();
        bench.Closed("K0.13-14").Should().BeTrue();
    }

    [Fact]
    public void OnDelayTimerWaitsAndReturnsAtOnce()
    {
        var bench = Played.With(
            """
            on-delay timer K4 10 s, coil 120 V
            selector S1 OFF | ON
            1 -> S1 at ON -> coil K4 -> 2
            lamp P1
            1 -> NO K4 -> P1 -> 2
            """
        );

        bench.Do("S1=ON")["K4"].Should().Be("out");
        bench.Do("K4=in").Closed("K4.17-18").Should().BeTrue();
        bench.Do("S1=OFF")["K4"].Should().Be("out");
        bench.Refuses("K4=in").Should().BeTrue();
    }

    [Fact]
    public void OffDelayTimerActsAtOnceAndReturnsLater()
    {
        var bench = Played.With(
            """
            off-delay timer K4 10 s, coil 120 V
            selector S1 OFF | ON
            1 -> S1 at ON -> coil K4 -> 2
            lamp P1
            1 -> NC K4 -> P1 -> 2
            """
        );

        bench.Do("S1=ON")["K4"].Should().Be("in");
        bench.Refuses("K4=out").Should().BeTrue();
        bench.Do("S1=OFF")["K4"].Should().Be("in");
        bench.Do("K4=out").Closed("K4.15-16").Should().BeTrue();
    }

    private static ContactFamily Break(Blueprint device) => device.Families.Single(f => f.Name == "NC");
}
