using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class ControlTests
{
    [Fact]
    public void ButtonsStartHoldAndStop()
    {
        var bench = Played.With(
            """
            push button S1 stop
            push button S2
            relay K0 coil 120 V
            1 -> S1 -> ( S2 | NO K0 ) -> coil K0 -> 2
            """
        );

        bench.Do("S2=pressed", "S2=released")["K0"].Should().Be("in");
        bench.Do("S1=pressed")["K0"].Should().Be("out");
        bench.Do("S1=released")["K0"].Should().Be("out");
    }

    [Fact]
    public void ButtonBreaksBeforeItMakes()
    {
        var bench = Played.With(
            """
            push button S2
            lamp P1 and P2
            1 -> S2 -> P1 -> 2
            1 -> NC S2 -> P2 -> 2
            """
        );

        bench.Reaches(Both("S2.13-14", "S2.21-22")).Should().BeFalse();
        bench.Reaches(Neither("S2.13-14", "S2.21-22")).Should().BeTrue();
    }

    [Fact]
    public void SelectorPassesItsNeighboursAndBreaksBetween()
    {
        var bench = Played.With(
            """
            selector S1 HAND | OFF | AUTO
            lamp P1 and P2
            1 -> S1 at HAND or OFF -> P1 -> 2
            1 -> S1 at AUTO -> P2 -> 2
            """
        );

        bench["S1"].Should().Be("OFF");
        bench.Closed("S1.13-14").Should().BeTrue();
        bench.Do("S1=AUTO").Closed("S1.23-24").Should().BeTrue();
        bench.Closed("S1.13-14").Should().BeFalse();
        bench.Reaches(Both("S1.13-14", "S1.23-24")).Should().BeFalse();
        bench.Reaches(Neither("S1.13-14", "S1.23-24")).Should().BeTrue();
    }

    [Fact]
    public void KeySelectorRestsWhereItIsToldTo()
    {
        var device = Declared.Device("key selector S2 NORMAL | BYPASS, rest BYPASS");

        device.Network.Variables[0].Rest.Should().Be("BYPASS");
        device.Network.Assumed.Should().BeEmpty();
        device.Use.Should().Be(ControlUse.Mode);
        Declared.Device("key selector S2 NORMAL | BYPASS").Network.Assumed.Should().ContainSingle();
    }

    [Fact]
    public void EmergencyStopLatches()
    {
        var bench = Played.With(
            """
            emergency stop S0
            relay K0 coil 120 V
            1 -> S0 -> coil K0 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("S0=pressed")["K0"].Should().Be("out");
        bench.Do("S0=released")["K0"].Should().Be("in");
        Declared.Device("emergency stop S0").Families.Single(f => f.Through).Welds.Should().BeFalse();
    }

    [Theory]
    [InlineData("level contact B1 closes on high water", "out", false)]
    [InlineData("level contact B1 closes on high water", "in", true)]
    [InlineData("pressure contact B1 opens on high pressure", "out", true)]
    [InlineData("limit switch B1 opens at gate open", "in", false)]
    [InlineData("flow contact B1 closes on flow", "in", true)]
    [InlineData("temperature contact B1 opens on \"winding hot\"", "out", true)]
    public void ProcessContactFollowsTheProcess(string line, string sensed, bool lit)
    {
        var bench = Played.With(
            $"""
            {line}
            relay K0 coil 120 V
            1 -> B1 -> coil K0 -> 2
            """
        );

        if (sensed == "in")
            bench.Do("B1=in");
        bench["K0"].Should().Be(lit ? "in" : "out");
    }

    [Fact]
    public void LampIsLitByTwoConductors()
    {
        var bench = Played.With(
            """
            lamp P1 red "running"
            horn P2
            selector S1 OFF | ON
            1 -> S1 at ON -> ( P1 | P2 ) -> 2
            """
        );

        bench.Runs("P1").Should().BeFalse();
        bench.Do("S1=ON").Runs("P1").Should().BeTrue();
        bench.Runs("P2").Should().BeTrue();
    }

    [Fact]
    public void SafetyRelayStartsOnReleaseAndWantsBothChannelsReopened()
    {
        var bench = Played.With(
            """
            safety relay K5 120 V
            emergency stop S0
            push button S3 "reset"
            selector S9 ON | FAULT, rest ON
            1 -> supply K5 -> 2
            K5:S11 -> S0:11-12 -> S9 at ON -> K5:S12
            K5:S21 -> S0:21-22 -> K5:S22
            K5:S33 -> S3 -> K5:S34
            """
        );

        bench["K5"].Should().Be("out");
        bench.Do("S3=pressed")["K5"].Should().Be("out");
        bench.Do("S3=released")["K5"].Should().Be("in");
        bench.Do("S0=pressed")["K5"].Should().Be("out");
        bench.Do("S0=released", "S3=pressed", "S3=released")["K5"].Should().Be("in");
        bench.Do("S9=FAULT")["K5"].Should().Be("out");
        bench.Do("S9=ON", "S3=pressed", "S3=released")["K5"].Should().Be("out");
        bench.Do("S0=pressed", "S0=released", "S3=pressed", "S3=released")["K5"].Should().Be("in");
    }

    [Fact]
    public void SafetyRelayChecksItsFeedbackLoop()
    {
        var bench = Played.With(
            """
            safety relay K5 120 V, feedback loop, reset automatic
            selector S1 OFF | ON
            selector S2 ON | STUCK, rest ON
            1 -> supply K5 -> 2
            K5:S11 -> S1 at ON -> K5:S12
            K5:S21 -> S1 at ON -> K5:S22
            K5:Y1 -> S2 at ON -> K5:Y2
            """
        );

        bench.Do("S1=ON")["K5"].Should().Be("in");
        bench.Do("S2=STUCK")["K5"].Should().Be("in");
        bench.Do("S1=OFF", "S1=ON")["K5"].Should().Be("out");
        bench.Do("S2=ON")["K5"].Should().Be("in");
    }

    private static Expression Both(string a, string b) => Expression.AllOf(new Closed(a), new Closed(b));

    private static Expression Neither(string a, string b) =>
        Expression.AllOf(Expression.Negate(new Closed(a)), Expression.Negate(new Closed(b)));
}
