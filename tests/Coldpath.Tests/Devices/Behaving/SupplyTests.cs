using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices.Behaving;

public class SupplyTests
{
    /// <summary>Volts between conductors and to earth by earthing, and what is bonded to earth.</summary>
    [Theory]
    [InlineData("supply MAINS 480Y/277 V, solidly earthed wye", "N", 480, 277.128)]
    [InlineData("supply MAINS 400/230 V, TN-S", "N", 400, 230.94)]
    [InlineData("supply MAINS 400/230 V, TN-C-S", "N", 400, 230.94)]
    [InlineData("supply MAINS 400/230 V, TN-C", "PEN", 400, 230.94)]
    [InlineData("supply MAINS 480 V, corner-earthed delta", "L2", 480, 480)]
    [InlineData("supply MAINS 240 V, high-leg delta", "N", 240, 120)]
    public void EarthedSupplyIsBondedByAConductor(string line, string bonded, double between, double toEarth)
    {
        var network = Declared.Device(line).Network;
        var conductors = network.Supplies.Single().Conductors.ToDictionary(c => c.Name);

        network
            .Elements.Should()
            .ContainSingle(e => e.Type == ElementType.Conductor && e.A == bonded && e.B == "PE");
        Volts(conductors["L1"], conductors["L3"]).Should().BeApproximately(between, 0.01);
        Volts(conductors["L1"], conductors["L2"]).Should().BeApproximately(between, 0.01);
        Volts(conductors["L1"], conductors[bonded]).Should().BeApproximately(toEarth, 0.01);
    }

    [Theory]
    [InlineData("L1")]
    [InlineData("L2")]
    [InlineData("L3")]
    public void HighLegStandsAboveTheOthersAndKeepsTheSequence(string leg)
    {
        var supply = Declared
            .Device($"supply MAINS 240 V, high-leg delta, high leg {leg}")
            .Network.Supplies.Single();
        var conductors = supply.Conductors.ToDictionary(c => c.Name);

        foreach (var phase in new[] { "L1", "L2", "L3" })
            Volts(conductors[phase], conductors["N"])
                .Should()
                .BeApproximately(phase == leg ? 207.846 : 120, 0.01);
        Turns(conductors["L1"], conductors["L2"], conductors["L3"]).Should().BeNegative();
    }

    [Theory]
    [InlineData("supply MAINS 500 V, IT")]
    [InlineData("supply MAINS 480 V, unearthed")]
    [InlineData("supply MAINS 230 V, 1-phase, IT")]
    public void UnearthedSupplyReachesEarthNowhere(string line) =>
        Declared.Device(line).Network.Elements.Should().BeEmpty();

    [Theory]
    [InlineData("supply MAINS 400/230 V, TT")]
    [InlineData("supply MAINS 480 V, resistance-earthed")]
    public void ElectrodeOrResistorTiesNothing(string line) =>
        Declared
            .Device(line)
            .Network.Elements.Should()
            .ContainSingle(e => e.Type == ElementType.Series && e.B == "PE");

    [Fact]
    public void CentreTapHalvesTheVoltage()
    {
        var network = Declared.Device("supply MAINS 240/120 V, 1-phase, earthed centre tap").Network;
        var conductors = network.Supplies.Single().Conductors.ToDictionary(c => c.Name);

        Volts(conductors["L1"], conductors["L2"]).Should().BeApproximately(240, 0.01);
        Volts(conductors["L1"], conductors["N"]).Should().BeApproximately(120, 0.01);
        network.Elements.Should().ContainSingle(e => e.A == "N" && e.B == "PE");
    }

    [Fact]
    public void RatingsComeFromTheHeader()
    {
        var facts = Declared.Iec with { Voltage = 690, SecondVoltage = 400 };
        var device = Declared.Device("supply MAINS", facts);

        device.Ratings.Single(r => r.Name == "voltage").Value.Should().Be(690);
        device.Ratings.Single(r => r.Name == "earthing").Text.Should().Be("TN-S");
        device.LoadSide.Should().Equal("L1", "L2", "L3", "N");
    }

    [Fact]
    public void PhasesAndTheWholeMayFail()
    {
        var bench = Played.With("disconnect Q1\nmotor M1\nMAINS[L1, L2, L3] -> Q1 -> M1");

        bench.Runs("M1").Should().BeTrue();
        bench.Do("MAINS.L2=lost").Runs("M1").Should().BeFalse();
        bench.Live("MAINS:L1").Should().BeTrue();
        bench.Do("MAINS.L2=there", "MAINS=absent").Live("MAINS:L1").Should().BeFalse();
        bench
            .Netlist.Variables.Where(v => v.Device == "MAINS" && v.Kind == VariableKind.Supply)
            .Should()
            .HaveCount(4);
    }

    [Fact]
    public void SuppliesAreInStepOnlyWhenSaid()
    {
        Played.With("generator G1").Netlist.Supplies.Select(s => s.Group).Should().OnlyHaveUniqueItems();
        Played
            .With("generator G1 synchronised with MAINS")
            .Netlist.Supplies.Where(s => s.Group == "MAINS")
            .Should()
            .HaveCount(2);
    }

    [Fact]
    public void LimitedAndExtraLowHoldOnlyWhenSaid()
    {
        var plain = Declared.Device("generator G1").Network.Supplies.Single();
        var small = Declared.Device("generator G1 limited").Network.Supplies.Single();

        (plain.Limited, plain.ExtraLow).Should().Be((false, false));
        (small.Limited, small.ExtraLow).Should().Be((true, false));
        Declared
            .Device("control supply EXT 24 V DC, PELV")
            .Network.Supplies.Single()
            .ExtraLow.Should()
            .BeTrue();
        Declared
            .Device("control transformer T1 400 V to 24 V, PELV")
            .Network.Converters.Single()
            .Output.ExtraLow.Should()
            .BeTrue();
        Declared
            .Device("control transformer T1 400 V to 24 V")
            .Network.Converters.Single()
            .Output.ExtraLow.Should()
            .BeFalse();
    }

    [Fact]
    public void ControlTransformerFeedsItsSecondaryAndIsCoupledBack()
    {
        var bench = Played.With(
            """
            disconnect Q1
            control transformer T1 400 V to 120 V, 100 VA, X2 earthed
            relay K0 coil 120 V
            Q1[L1, L2] -> T1
            MAINS[L1, L2, L3] -> Q1
            T1:X1 -> coil K0 -> T1:X2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Do("Q1=open")["K0"].Should().Be("out");
        bench.Netlist.Converters.Single().Ratio.Should().BeApproximately(400 / 120.0, 1e-6);
        bench.Netlist.Converters.Single().Windings.Should().HaveCount(2);
    }

    [Fact]
    public void TransferSwitchPassesOneSupplyOrNone()
    {
        var bench = Played.With(
            """
            generator G1
            transfer switch TS1 manual
            motor M1
            MAINS[L1, L2, L3] -> TS1[N1, N2, N3]
            G1[L1, L2, L3] -> TS1[E1, E2, E3]
            TS1 -> M1
            """
        );

        bench["TS1"].Should().Be("NORMAL");
        bench.Do("MAINS=absent").Runs("M1").Should().BeFalse();
        bench.Refuses("TS1=ELSEWHERE").Should().BeTrue();
        bench.Do("TS1=EMERGENCY").Runs("M1", Turning.Forward).Should().BeTrue();
        bench.Reaches(Expression.AllOf(new Closed("TS1.N1-T1"), new Closed("TS1.E1-T1"))).Should().BeFalse();
    }

    [Fact]
    public void AutomaticTransferGoesToTheSupplyThatIsThere()
    {
        var bench = Played.With(
            """
            disconnect Q1 and Q2
            generator G1
            transfer switch TS1 automatic
            motor M1
            MAINS[L1, L2, L3] -> Q1 -> TS1[N1, N2, N3]
            G1[L1, L2, L3] -> Q2 -> TS1[E1, E2, E3]
            TS1 -> M1
            """
        );

        bench["TS1"].Should().Be("NORMAL");
        bench.Refuses("TS1=OFF").Should().BeTrue();
        bench.Do("Q1=open", "TS1=OFF", "TS1=EMERGENCY").Runs("M1").Should().BeTrue();
        bench.Do("Q1=closed", "TS1=OFF", "TS1=NORMAL").Runs("M1").Should().BeTrue();
    }

    [Fact]
    public void CapacitorKeepsItsChargeUntilItHasDischarged()
    {
        var bench = Played.With(
            "disconnect Q1\ncapacitor C1 12 kvar 400 V, discharge 60 s\nMAINS[L1, L2, L3] -> Q1 -> C1"
        );

        bench.Do("C1=charged");
        bench.Refuses("C1=discharged").Should().BeTrue();
        bench.Do("Q1=open").Live("C1:L1").Should().BeTrue();
        bench.Do("C1=discharged").Live("C1:L1").Should().BeFalse();
        Declared.Device("capacitor C1 12 kvar").Network.Supplies.Single().Store!.Discharge.Should().BeNull();
    }

    [Fact]
    public void EarthBarTiesAndElectrodeDoesNot()
    {
        Declared.Device("earth XPE").Network.Elements.Single().Type.Should().Be(ElementType.Conductor);
        Declared.Device("earth XPE electrode").Network.Elements.Single().Type.Should().Be(ElementType.Series);
    }

    [Fact]
    public void StripAndBlockJoinWhatIsWiredToThem()
    {
        var bench = Played.With(
            """
            distribution block XD1
            terminal strip X1
            relay K0 and K1 coil 120 V
            MAINS[L1, L2, L3] -> XD1
            1 -> X1:7 -> coil K0 -> 2
            1 -> X1:8 -> coil K1 -> 2
            """
        );

        bench["K0"].Should().Be("in");
        bench.Live("XD1:L2").Should().BeTrue();
        bench.Live("XD1:N").Should().BeFalse();
    }

    private static double Volts(SupplyConductor a, SupplyConductor b) => (Phasor(a) - Phasor(b)).Magnitude;

    private static System.Numerics.Complex Phasor(SupplyConductor c) =>
        System.Numerics.Complex.FromPolarCoordinates(c.Volts, c.Degrees * Math.PI / 180);

    /// <summary>Negative when the three follow each other clockwise, as L1, L2, L3 do.</summary>
    private static double Turns(SupplyConductor a, SupplyConductor b, SupplyConductor c)
    {
        var (ab, bc) = (Phasor(b) - Phasor(a), Phasor(c) - Phasor(b));
        return ab.Real * bc.Imaginary - ab.Imaginary * bc.Real;
    }
}
