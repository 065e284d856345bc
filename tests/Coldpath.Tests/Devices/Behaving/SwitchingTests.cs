using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>What is switched by hand, by a machine or by a latch.</summary>
public class SwitchingTests
{
    [Fact]
    public void LatchedContactorStaysWithoutVoltage()
    {
        var bench = Played.With(
            """
            latched contactor K1 coil 120 V
            push button S2 and S3
            motor M1
            MAINS[L1, L2, L3] -> K1 -> M1
            1 -> S2 -> set K1 -> 2
            1 -> S3 -> reset K1 -> 2
            """
        );

        bench["K1"].Should().Be("out");
        bench.Do("S2=pressed", "S2=released").Runs("M1").Should().BeTrue();
        bench.Do("EXT=absent", "EXT=present").Runs("M1").Should().BeTrue();
        bench.Do("S3=pressed", "S3=released").Runs("M1").Should().BeFalse();
    }

    [Fact]
    public void LatchedContactorWithBothCoilsEnergisedIsLeftOpen()
    {
        var bench = Played.With(
            """
            latched contactor K1 coil 120 V
            selector S2 and S3 OFF | ON
            lamp P1
            1 -> S2 at ON -> set K1 -> 2
            1 -> S3 at ON -> reset K1 -> 2
            1 -> NO K1 -> P1 -> 2
            """
        );
        var moves = bench.Netlist.Variables.Single(v => v.Name == "K1").Moves;

        bench.Do("S2=ON", "S3=ON");
        moves.Should().HaveCount(2);
        moves.Should().OnlyContain(m => !bench.Holds(m.When) && bench.Holds(m.May));
    }

    [Fact]
    public void PlugIsolatesAndBreaksItsEarthToo()
    {
        var bench = Played.With(
            """
            plug and socket X6 32 A 400 V, earth contact
            motor M1
            MAINS[L1, L2, L3] -> X6 -> M1
            X6:PE1 -> PE
            """
        );

        bench.Runs("M1").Should().BeTrue();
        bench.Joined("X6:PE1", "X6:PE2").Should().BeTrue();
        bench.Do("X6=out").Runs("M1").Should().BeFalse();
        bench.Live("M1:U/U1/T1").Should().BeFalse();
        bench.Joined("X6:PE1", "X6:PE2").Should().BeFalse();
        var isolates = bench.Netlist.Devices.Single(d => d.Tag == "X6").Isolates!;
        (isolates.Rank, isolates.Visible, isolates.Elements.Count).Should().Be((1, true, 3));
    }

    [Fact]
    public void KnifeTerminalOpensAndIsolatesOnlyWhenMadeForIt()
    {
        var bench = Played.With(
            """
            knife terminal X5
            relay K0 coil 120 V
            1 -> X5 -> coil K0 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("X5=open")["K0"].Should().Be("out");
        Isolation("knife terminal X5", Declared.Iec).Should().BeNull();
        Isolation("knife terminal X5 suitable for isolation", Declared.Iec)!.Rank.Should().Be(2);
        Isolation("knife terminal X5 suitable for isolation, lockable", Declared.Iec)!.Rank.Should().Be(1);
        Isolation("knife terminal X5 suitable for isolation", Declared.Nec).Should().BeNull();
    }

    [Fact]
    public void DoorSwitchOpensWithTheDoor()
    {
        var bench = Played.With(
            """
            door switch B8
            relay K0 coil 120 V
            lamp P1
            1 -> B8 -> coil K0 -> 2
            1 -> NO B8 -> P1 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("B8=ajar")["K0"].Should().Be("out");
        bench.Runs("P1").Should().BeTrue();
        Through("door switch B8").Welds.Should().BeTrue();
        Through("door switch B8 positive opening").Welds.Should().BeFalse();
    }

    [Theory]
    [InlineData("zero-speed switch B9", "turning")]
    [InlineData("zero-speed switch B9 closes at standstill", "still")]
    public void ZeroSpeedSwitchFollowsTheShaft(string line, string closed)
    {
        var bench = Played.With(
            $"""
            {line}
            relay K0 coil 120 V
            1 -> B9 -> coil K0 -> 2
            """
        );

        bench["K0"].Should().Be(closed == "still" ? "in" : "out");
        bench.Do("B9=turning")["K0"].Should().Be(closed == "turning" ? "in" : "out");
    }

    [Fact]
    public void PushToTestLampIsLitBySignalOrTestAndJoinsThemNever()
    {
        var bench = Played.With(
            """
            push-to-test lamp P1 red
            selector S1 OFF | ON
            1 -> S1 at ON -> P1 -> 2
            1 -> P1:X3
            """
        );

        bench.Runs("P1").Should().BeFalse();
        bench.Do("P1=pressed").Runs("P1").Should().BeTrue();
        bench.Live("P1:X1").Should().BeFalse();
        bench.Do("P1=released").Runs("P1").Should().BeFalse();
        bench.Do("S1=ON").Runs("P1").Should().BeTrue();
        var both = Expression.AllOf(new Closed("P1.X1-*filament"), new Closed("P1.X3-*filament"));
        bench.Reaches(both).Should().BeFalse();
    }

    [Fact]
    public void OutputCardSwitchesWhenItPleasesWhileSupplied()
    {
        var bench = Played.With(
            """
            output card A2 auxiliary supply 120 V, outputs 2
            selector S1 ON | GONE, rest ON
            relay K0 coil 120 V
            1 -> S1 at ON -> supply A2 -> 2
            1 -> A2:COM
            A2:Q2 -> coil K0 -> 2
            """
        );

        bench["K0"].Should().Be("out");
        bench.Do("A2.output2=on")["K0"].Should().Be("in");
        bench.Do("S1=GONE")["K0"].Should().Be("out");
        bench.Refuses("A2.output2=on").Should().BeTrue();
    }

    [Fact]
    public void ElectronicOutputLeaks() =>
        Played
            .With(
                """
                output card A2 electronic, outputs 2
                relay K0 coil 120 V
                1 -> A2:COM
                A2:Q2 -> coil K0 -> 2
                """
            )
            .Live("A2:Q2")
            .Should()
            .BeTrue();

    private static Isolation? Isolation(string line, PanelFacts facts) =>
        Declared.Device(line, facts).Network.Devices[0].Isolates;

    private static ContactFamily Through(string line) =>
        Declared.Device(line).Families.Single(f => f.Through);
}
