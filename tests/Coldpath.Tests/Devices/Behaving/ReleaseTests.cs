using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>Breakers that trip by more than their own current.</summary>
public class ReleaseTests
{
    private const string Rung = """
        selector S1 ON | GONE, rest ON
        motor M1
        MAINS[L1, L2, L3] -> Q1 -> M1
        """;

    [Theory]
    [InlineData("breaker Q1 50 A, shunt trip 120 V")]
    [InlineData("manual motor starter Q1 9 A, shunt trip 120 V")]
    public void ShuntTripOpensWhenEnergised(string line)
    {
        var bench = Played.With(
            $"""
            {line}
            {Rung}
            push button S2
            1 -> S2 -> shunt trip Q1 -> 2
            """
        );

        bench.Runs("M1").Should().BeTrue();
        bench.Do("S2=pressed")["Q1"].Should().Be("tripped");
        bench.Runs("M1").Should().BeFalse();
        bench.Do("S2=released", "Q1=open", "Q1=closed").Runs("M1").Should().BeTrue();
    }

    [Theory]
    [InlineData("breaker Q1 50 A, undervoltage release 120 V")]
    [InlineData("manual motor starter Q1 9 A, undervoltage release 120 V")]
    public void UndervoltageReleaseOpensWithoutVoltageAndLetsNothingClose(string line)
    {
        var bench = Played.With(
            $"""
            {line}
            {Rung}
            1 -> S1 at ON -> undervoltage release Q1 -> 2
            """
        );

        bench.Runs("M1").Should().BeTrue();
        bench.Do("S1=GONE")["Q1"].Should().Be("tripped");
        bench.Do("Q1=open").Refuses("Q1=closed").Should().BeTrue();
        bench.Do("S1=ON", "Q1=closed").Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void UndervoltageReleaseDropsWithTheSupply() =>
        Played
            .With($"breaker Q1 undervoltage release 120 V\n{Rung}\n1 -> undervoltage release Q1 -> 2")
            .Do("EXT=absent")
            .Runs("M1")
            .Should()
            .BeFalse();

    [Fact]
    public void ManualMotorStarterTripsOnItsMotorsCurrentAndSignalsIt()
    {
        var bench = Played.With(
            $"""
            manual motor starter Q1 4 kW, set 8.5 A, class 10
            {Rung}
            lamp P1
            1 -> NO Q1 trip -> P1 -> 2
            """
        );
        var trip = bench.Netlist.Variables.Single(v => v.Name == "Q1").Moves.Single(m => m.By == Mover.Trip);

        bench.Holds(trip.When).Should().BeTrue();
        bench.Runs("P1").Should().BeFalse();
        bench.Do("Q1=tripped").Runs("M1").Should().BeFalse();
        bench.Runs("P1").Should().BeTrue();
        bench.Holds(trip.When).Should().BeFalse();
        bench.Do("Q1=open").Runs("P1").Should().BeFalse();
    }

    [Fact]
    public void ManualMotorStarterClearsAShortAndProtectsItsMotor()
    {
        var bench = Played.With(
            """
            manual motor starter Q1 9 A, phase loss, lockable, interrupting 50 kA
            selector S1 OFF | FAULT
            MAINS[L1, L2, L3] -> Q1
            Q1[2] -> S1 at FAULT -> PE
            """
        );
        var device = bench.Netlist.Devices.Single(d => d.Tag == "Q1");

        bench.Do("S1=FAULT")["Q1"].Should().Be("tripped");
        device.Protects.Select(p => p.Against).Should().Equal("overload", "phase loss");
        device.Isolates!.Rank.Should().Be(1);
        device.OpensOnShort.Single().Breaks.Should().Be(50);
    }
}
