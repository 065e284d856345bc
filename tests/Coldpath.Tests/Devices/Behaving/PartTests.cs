using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>What only conducts, or only takes current.</summary>
public class PartTests
{
    [Fact]
    public void CableAndBusbarConduct()
    {
        var bench = Played.With(
            """
            busbar W1 400 A, withstand 25 kA
            cable W2 25 m, 35 mm2, earth core
            motor M1
            MAINS -> W1
            W1[L1, L2, L3] -> W2 -> M1
            PE -> W2:PE1
            """
        );

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Joined("W2:PE2", "W2:PE1").Should().BeTrue();
        bench
            .Netlist.Variables.Where(v => v.Name.StartsWith("W2.", StringComparison.Ordinal))
            .Should()
            .HaveCount(4, "each core may break")
            .And.OnlyContain(v => v.Class == FailureClass.Wiring);
    }

    [Theory]
    [InlineData("dv/dt")]
    [InlineData("sine")]
    public void FilterCarriesTheMotorsCurrent(string type)
    {
        var bench = Played.With(
            $"""
            output filter R4 {type}, 30 A
            motor M1
            MAINS[L1, L2, L3] -> R4 -> M1
            """
        );

        bench.Runs("M1").Should().BeTrue();
        bench.Holds(new Carries("R4.1/U1-2/U2")).Should().BeTrue();
    }

    [Theory]
    [InlineData("hour meter P5 120 V")]
    [InlineData("space heater P5 50 W 120 V")]
    public void LoadWorksWhileItIsFed(string line)
    {
        var bench = Played.With(
            $"""
            {line}
            selector S1 OFF | ON
            1 -> S1 at ON -> P5 -> 2
            """
        );

        bench.Runs("P5").Should().BeFalse();
        bench.Do("S1=ON").Runs("P5").Should().BeTrue();
    }

    [Fact]
    public void HeaterOfThreePhasesStillHeatsOnTwo()
    {
        var bench = Played.With(
            """
            space heater E1 2 kW 400 V, phases 3
            MAINS[L1, L2, L3] -> E1
            """
        );

        bench.Runs("E1").Should().BeTrue();
        bench.Do("MAINS.L2=lost").Runs("E1").Should().BeTrue();
        bench.Do("MAINS.L3=lost").Runs("E1").Should().BeFalse();
    }

    [Fact]
    public void BrakingResistorIsLiveWithItsDriveAndSaysWhenItIsHot()
    {
        var bench = Played.With(
            """
            drive U1 65 A, control supply 120 V, input 120 V, brake chopper
            braking resistor R3 40 ohm, thermal contact
            relay K0 coil 120 V
            MAINS[L1, L2, L3] -> U1
            U1:DC+ -> R3 -> U1:BR
            1 -> supply U1 -> 2
            1 -> NC R3 -> coil K0 -> 2
            """
        );

        bench.Live("R3:2").Should().BeTrue();
        bench["K0"].Should().Be("in");
        bench.Do("R3=hot")["K0"].Should().Be("out");
    }

    [Theory]
    [InlineData("L+", "L-", "diode", false)]
    [InlineData("L-", "L+", "diode", true)]
    [InlineData("L-", "L+", "varistor", false)]
    public void SuppressorDiodeTheWrongWayRoundIsAShort(
        string first,
        string second,
        string type,
        bool shorted
    )
    {
        var bench = Played.With(
            $"""
            control supply DC 24 V DC, SELV
            suppressor R9 {type}
            selector S1 OFF | ON
            relay K0 coil 24 V DC
            DC[{first}] -> S1 at ON -> ( R9 | coil K0 ) -> DC[{second}]
            """
        );

        bench["K0"].Should().Be("out");
        bench.Reaches(new InShort("DC")).Should().Be(shorted);
        if (!shorted)
            bench.Do("S1=ON")["K0"].Should().Be("in");
    }

    [Fact]
    public void InputCardTakesItsInputsApart()
    {
        var bench = Played.With(
            """
            input card A1 120 V, inputs 3
            selector S1 OFF | ON
            1 -> S1 at ON -> A1:I2
            A1:COM -> 2
            """
        );

        bench.Live("A1:I2").Should().BeFalse();
        bench.Do("S1=ON").Live("A1:I2").Should().BeTrue();
        bench.Live("A1:I3").Should().BeFalse();
        bench.Holds(new Carries("A1.I2-COM")).Should().BeTrue();
    }

    [Fact]
    public void WoundRotorIsLiveWithItsStator()
    {
        var bench = Played.With(
            """
            disconnect Q1
            contactor K2 coil 120 V
            starting resistor R1 2 ohm
            wound-rotor motor M1 75 kW 400 V
            MAINS[L1, L2, L3] -> Q1 -> M1
            M1 -> R1 -> K2
            """
        );

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Live("R1:2/T1").Should().BeTrue();
        bench.Do("Q1=open").Live("R1:2/T1").Should().BeFalse();
    }

    [Fact]
    public void MagnetMotorTurnsByPolarityAndFeedsBackWhileItTurns()
    {
        var bench = Played.With(
            """
            control supply DC 180 V DC, SELV
            disconnect Q1 two-pole
            disconnect Q2 two-pole, standby
            dc motor M1 2.2 kW 180 V
            DC -> Q1 -> M1
            DC[L-, L+] -> Q2 -> M1
            """
        );

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Runs("M1", Turning.Reverse).Should().BeFalse();
        bench.Do("M1=turning", "Q1=open").Live("M1:A1").Should().BeTrue();
        bench.Do("M1=still").Live("M1:A1").Should().BeFalse();
        bench.Do("Q2=closed").Runs("M1", Turning.Reverse).Should().BeTrue();
    }

    [Theory]
    [InlineData("shunt", "E1", "E2")]
    [InlineData("separate", "F1", "F2")]
    public void MotorWithAWoundFieldMayTurnEitherWay(string field, string first, string second)
    {
        var bench = Played.With(
            $"""
            control supply DC 220 V DC, SELV
            dc motor M1 {field}, 5 kW 220 V
            DC -> M1[A1, A2]
            DC -> M1[{first}, {second}]
            """
        );

        bench.Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Runs("M1", Turning.Reverse).Should().BeTrue();
    }

    [Fact]
    public void SeriesMotorRunsThroughItsField() =>
        Played
            .With(
                """
                control supply DC 220 V DC, SELV
                dc motor M1 series, 5 kW 220 V
                DC[L+] -> M1:D1
                M1:D2 -> M1:A1
                M1:A2 -> DC[L-]
                """
            )
            .Runs("M1")
            .Should()
            .BeTrue();
}
