using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>Energised, fed and single.</summary>
[Trait("Set", "engine")]
public sealed class EnergisedTests
{
    private static Energised Solid(double low = 0, double? high = null) =>
        new("x", "y", Grade.Solid, low, high);

    private static readonly Energised Loose = new("x", "y", Grade.Loose, 0, null);

    [Fact]
    public void The_voltage_between_the_two_conductors_lies_in_the_band()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Contact("L1", "x", "A")
            .Contact("L2", "y", "B")
            .Contact("N", "y", "C");
        bench.Holds(Solid(390, 400), "A", "B").Should().BeTrue("398 V");
        bench.Holds(Solid(390, 400), "A", "C").Should().BeFalse("230 V");
        bench.Holds(Solid(230, 230), "A", "C").Should().BeTrue("bounds are included");
        bench.Holds(Solid(), "A").Should().BeFalse();
    }

    [Fact]
    public void One_component_is_not_energised_in_itself()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Contact("L1", "x")
            .Contact("L2", "y")
            .Contact("x", "y", "K");
        bench.Holds(Solid(), "K").Should().BeFalse();
        bench.Holds(Solid()).Should().BeTrue();
    }

    [Fact]
    public void Conductors_of_two_supplies_energise_nothing()
    {
        var bench = new Bench().TwoWire("A", "x n").TwoWire("B", "y n");
        bench.Holds(Solid()).Should().BeFalse();
    }

    [Fact]
    public void Through_a_coil_or_a_resistor_only_loosely()
    {
        var bench = new Bench()
            .TwoWire("T", "L y")
            .Coil("L", "x", "coil")
            .Link("ohm", ElementType.Series, "L", "x", "ohm");
        bench.Holds(Solid(), "coil").Should().BeFalse();
        bench.Holds(Solid(), "ohm").Should().BeFalse();
        bench.Holds(Loose, "coil").Should().BeTrue();
        bench.Holds(Loose, "ohm").Should().BeTrue();
        bench.Holds(new Energised("x", "y", Grade.Load, 0, null), "ohm").Should().BeTrue();
        bench.Holds(Loose).Should().BeFalse();
    }

    [Fact]
    public void Loosely_both_sides_reached_the_same_way_drive_no_current()
    {
        var bench = new Bench()
            .TwoWire("T", "L N")
            .Coil("L", "m")
            .Contact("m", "x")
            .Contact("m", "y", "K")
            .Coil("x", "y");
        bench.Holds(Loose, "K").Should().BeFalse();
        var deadEnd = new Bench().TwoWire("T", "L N").Coil("L", "x").Coil("x", "y");
        deadEnd.Holds(Loose).Should().BeFalse("nothing leads on from y");
    }

    [Fact]
    public void A_store_energises_loosely_only()
    {
        var bench = new Bench().Direct("C", "x y", 300, new("c", null));
        bench.Holds(Solid()).Should().BeFalse();
        bench.Holds(Loose).Should().BeTrue();
    }

    [Fact]
    public void Backwards_through_a_transformer_only_loosely()
    {
        var bench = new Bench()
            .TwoWire("FOREIGN", "s1 s2")
            .Transformer("T", "x y", "s1 s2", Expression.False);
        bench.Holds(Solid()).Should().BeFalse();
        bench.Holds(Loose).Should().BeTrue();
    }

    [Fact]
    public void A_converter_is_active_by_least_fixpoint()
    {
        var bench = new Bench().TwoWire("MAINS", "L N", 230).Contact("L", "p", "Q");
        bench.Transformer("T1", "p N", "a b", new Energised("p", "N", Grade.Solid, 200, null));
        bench.Transformer("T2", "a b", "c d", new Energised("a", "b", Grade.Solid, 100, null), 24);
        bench.Holds(new Energised("c", "d", Grade.Solid, 20, 30), "Q").Should().BeTrue();
        bench.Holds(new Energised("c", "d", Grade.Solid, 20, 30)).Should().BeFalse();
        bench.Holds(n => n.Active("T2.out"), "Q").Should().BeTrue();

        var ring = new Bench();
        ring.Transformer("A", "a b", "c d", new Energised("a", "b", Grade.Solid, 1, null));
        ring.Transformer("B", "c d", "a b", new Energised("c", "d", Grade.Solid, 1, null));
        ring.Holds(n => n.Active("A.out")).Should().BeFalse("two converters cannot hold each other up");
    }

    [Fact]
    public void Fed_needs_three_conductors_of_one_supply_in_order()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N");
        bench
            .Contact("L1", "a")
            .Contact("L2", "b", "ok")
            .Contact("L3", "c", "ok")
            .Contact("L3", "b", "swap")
            .Contact("L2", "c", "swap");
        Fed Order(PhaseOrder order) => new("a", "b", "c", order, Grade.Solid);
        bench.Holds(Order(PhaseOrder.Forward), "ok").Should().BeTrue();
        bench.Holds(Order(PhaseOrder.Reverse), "ok").Should().BeFalse();
        bench.Holds(Order(PhaseOrder.Reverse), "swap").Should().BeTrue();
        bench.Holds(Order(PhaseOrder.Any), "swap").Should().BeTrue();
        bench.Holds(Order(PhaseOrder.Any)).Should().BeFalse();
    }

    [Fact]
    public void Two_phases_and_the_neutral_do_not_feed()
    {
        var bench = new Bench().Star("MAINS", "a b L3 c");
        bench.Holds(new Fed("a", "b", "c", PhaseOrder.Any, Grade.Solid)).Should().BeFalse();
    }

    [Fact]
    public void A_dead_leg_fed_by_the_running_motor_is_fed_loosely()
    {
        var bench = new Bench().Star("MAINS", "a b L3 N").Contact("L3", "c", "fuse").Coil("b", "c");
        bench.Holds(new Fed("a", "b", "c", PhaseOrder.Any, Grade.Solid)).Should().BeFalse();
        bench.Holds(new Fed("a", "b", "c", PhaseOrder.Any, Grade.Solid), "fuse").Should().BeTrue();
    }

    [Fact]
    public void Single_is_exactly_two_voltages()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Series("L1", "a")
            .Contact("L2", "b", "B")
            .Contact("L3", "c", "C");
        var single = new SinglePhased("a", "b", "c");
        bench.Holds(single, "B").Should().BeTrue();
        bench.Holds(single, "B", "C").Should().BeFalse();
        bench.Holds(single).Should().BeFalse();
    }
}
