using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>Parts that no longer conduct, whatever their kind.</summary>
public class OpeningTests
{
    [Theory]
    [InlineData("contactor Q5 coil 120 V", "Q5.open2", "1 -> coil Q5 -> 2")]
    [InlineData("fuse Q5 three-pole 10 A", "Q5.parted2", "")]
    [InlineData("overload relay Q5 class 10, set 10 A", "Q5.parted2", "")]
    [InlineData("line reactor Q5 3 %", "Q5.burnt2", "")]
    [InlineData("disconnect Q5", "Q5.open2", "")]
    [InlineData("drive Q5 16 A, discharge 300 s", "Q5.blocked2", "Q5:P24 -> Q5:IN1")]
    [InlineData(
        "soft starter Q5 16 A, three-leg, control supply 120 V",
        "Q5.blocked2",
        "1 -> supply Q5 -> 2\n1 -> input run Q5 -> 2"
    )]
    public void AMotorDoesNotRunOnTwoPhases(string line, string failure, string control)
    {
        var bench = Played.Failing([failure], $"{line}\nmotor M1\nMAINS[L1, L2, L3] -> Q5 -> M1\n{control}");

        bench.Runs("M1").Should().BeTrue();
        bench.Do($"{failure}=yes").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void AContactDoesNotMake()
    {
        var bench = Played.Failing(
            ["S2.open13-14"],
            "push button S2\nrelay K1 coil 120 V\n1 -> S2 -> coil K1 -> 2"
        );

        bench.Do("S2=pressed")["K1"].Should().Be("in");
        bench.Do("S2=released", "S2.open13-14=yes", "S2=pressed")["K1"].Should().Be("out");
    }

    [Theory]
    [InlineData("lamp P1")]
    [InlineData("horn P1")]
    [InlineData("hour meter P1")]
    [InlineData("space heater P1")]
    public void ALoadBurntOutDoesNothingThoughItIsFed(string line)
    {
        var bench = Played.Failing(["P1.burnt"], $"{line}\n1 -> P1 -> 2");

        bench.Runs("P1").Should().BeTrue();
        bench.Do("P1.burnt=yes").Runs("P1").Should().BeFalse();
        bench.Live("1").Should().BeTrue();
    }

    [Fact]
    public void AMotorWithAnOpenWindingCountsAsRunningStill() =>
        Played
            .Failing(["M1.burntU"], "motor M1\nMAINS[L1, L2, L3] -> M1")
            .Do("M1.burntU=yes")
            .Runs("M1")
            .Should()
            .BeTrue("it hums, and may turn if it turned before");

    [Fact]
    public void ADiodeOpenLetsNothingPass()
    {
        var bench = Played.Failing(
            ["R8.blocked"],
            """
            control supply G5 24 V DC, PELV
            diode R8
            lamp P1
            G5[L+] -> R8 -> P1 -> G5[L-]
            """
        );

        bench.Live("R8:K").Should().BeTrue();
        bench.Do("R8.blocked=yes").Live("R8:K").Should().BeFalse();
    }
}
