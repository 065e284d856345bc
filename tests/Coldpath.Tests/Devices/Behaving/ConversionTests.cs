using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>What makes a supply of its own out of another.</summary>
public class ConversionTests
{
    private const string Supplied = """
        disconnect Q1
        relay K0 coil 24 V DC
        MAINS[L1, N] -> Q1[1/L1, 3/L2] -> G3
        G3:V+ -> coil K0 -> G3:V-
        """;

    [Fact]
    public void PowerSupplyFollowsItsInput()
    {
        var bench = Played.With(
            $"""
            power supply G3 24 V DC, input 230 V, minus earthed, ready contact
            lamp P1
            {Supplied}
            1 -> NO G3 ready -> P1 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Live("G3:V+").Should().BeTrue();
        bench.Live("G3:V-").Should().BeFalse();
        bench.Runs("P1").Should().BeTrue();
        bench.Do("Q1=open")["K0"].Should().Be("out");
        bench.Live("G3:V+").Should().BeFalse();
        bench.Runs("P1").Should().BeFalse();
    }

    [Fact]
    public void PowerSupplyAtAnotherVoltageIsNotCalledDead()
    {
        var bench = Played.With($"power supply G3 24 V DC, input 120 V\n{Supplied}");

        bench["K0"].Should().Be("out");
        bench.Live("G3:V+").Should().BeTrue();
    }

    [Theory]
    [InlineData("", false)]
    [InlineData(", bidirectional", true)]
    public void PowerSupplyFeedsBackOnlyWhenSaid(string flag, bool back)
    {
        var bench = Played.With(
            $"""
            control supply BAT 24 V DC, SELV
            power supply G3 24 V DC{flag}
            disconnect Q1
            MAINS[L1, N] -> Q1[1/L1, 3/L2] -> G3
            BAT -> G3[V+, V-]
            """
        );

        bench.Do("MAINS=absent", "Q1=open").Live("G3:L").Should().Be(back);
    }

    [Fact]
    public void ParalleledPowerSuppliesAreNoShort()
    {
        var lines = """
            power supply G3 24 V DC, paralleled with G4
            power supply G4 24 V DC
            MAINS[L1, N] -> G3
            MAINS[L1, N] -> G4
            G3 -> G4[V+, V-]
            """;

        Played.With(lines).Reaches(new InShort("G3")).Should().BeFalse();
    }

    [Theory]
    [InlineData("ups G2 120 V, common neutral", true)]
    [InlineData("ups G2 120 V, common neutral, backfeed protection", false)]
    public void UpsGoesOnWithoutItsInputWhichCountsAsBackfed(string line, bool backfed)
    {
        var bench = Played.With(
            $"""
            {line}
            disconnect Q1
            relay K0 coil 120 V
            MAINS[L1] -> Q1[1/L1] -> G2:L
            MAINS[N] -> G2:N
            G2:UL -> coil K0 -> G2:UN
            """
        );

        bench["K0"].Should().Be("in");
        bench.Live("G2:UN").Should().BeFalse();
        bench.Do("Q1=open")["K0"].Should().Be("in");
        bench.Live("G2:L").Should().Be(backfed);
        bench.Do("G2.battery=empty")["K0"].Should().Be("out");
        bench.Live("G2:UL").Should().BeFalse();
    }

    [Fact]
    public void UpsThatIsOffStillLeaks()
    {
        var bench = Played.With(
            """
            ups G2 120 V, common neutral, remote off
            selector S1 ON | GONE, rest ON
            relay K0 coil 120 V
            MAINS[L1, N] -> G2
            G2:R1 -> S1 at ON -> G2:R2
            G2:UL -> coil K0 -> G2:UN
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("S1=GONE")["G2"].Should().Be("off");
        bench.Joined("G2:UL", "G2:UN").Should().BeFalse();
        bench.Live("G2:UL").Should().BeTrue();
        bench.Refuses("G2=on").Should().BeTrue();
    }

    [Fact]
    public void BrakeIsReleasedThroughItsRectifierAndSetByEitherSide()
    {
        var bench = Played.With(
            """
            contactor K1 and K2 coil 120 V, two-pole
            selector S1 and S2 ON | GONE, rest ON
            brake rectifier T5 400 V to 180 V
            brake Q8 180 V DC
            1 -> S1 at ON -> coil K1 -> 2
            1 -> S2 at ON -> coil K2 -> 2
            MAINS[L1, L2] -> K1 -> T5[1, 2]
            T5:3 -> K2[1/L1] -> T5:4
            T5:5 -> Q8 -> T5:6
            """
        );

        bench.Runs("Q8").Should().BeTrue();
        bench.Do("S2=GONE").Runs("Q8").Should().BeFalse();
        bench.Do("S2=ON", "S1=GONE").Runs("Q8").Should().BeFalse();
        bench.Live("Q8:1").Should().BeFalse();
        bench.Do("S1=ON").Runs("Q8").Should().BeTrue();
    }
}
