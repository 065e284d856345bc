using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

[Trait("Set", "engine")]
public sealed class ShortTests
{
    [Fact]
    public void Two_conductors_of_different_voltage_joined_are_a_short()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Contact("L1", "a").Contact("L2", "a", "K");
        bench.Short("K").Should().BeTrue();
        bench.Short().Should().BeFalse();
    }

    [Fact]
    public void A_coil_between_them_is_none_nor_is_a_series_element()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Coil("L1", "L2").Series("L2", "L3");
        bench.Short().Should().BeFalse();
    }

    [Fact]
    public void A_phase_to_a_bonded_neutral_through_earth_is_a_short()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE").Fault("L1", "PE", "touch");
        bench.Short("touch").Should().BeTrue();
    }

    [Fact]
    public void Supplies_joined_at_one_point_are_no_short_but_noted()
    {
        var bench = new Bench()
            .TwoWire("A", "a n")
            .TwoWire("B", "b m")
            .Contact("n", "m")
            .Contact("a", "b", "K");
        bench.Short().Should().BeFalse();
        bench.Holds(n => n.JoinedAtOnePoint("A", "B")).Should().BeTrue();
        bench.Short("K").Should().BeTrue("unsynchronised supplies never sum to zero");
        bench.Holds(n => n.JoinedAtOnePoint("A", "B"), "K").Should().BeFalse();
        bench.Holds(n => n.JoinedTwice("A", "B"), "K").Should().BeTrue();
    }

    [Fact]
    public void Synchronised_supplies_in_parallel_are_no_short_until_crossed()
    {
        var bench = new Bench().Star("A", "a1 a2 a3", "G").Star("B", "b1 b2 b3", "G");
        bench.Contact("a1", "b1").Contact("a2", "b2", "right").Contact("a2", "b3", "wrong");
        bench.Short("right").Should().BeFalse();
        bench.Holds(n => n.JoinedTwice("A", "B"), "right").Should().BeTrue();
        bench.Short("wrong").Should().BeTrue();
    }

    [Fact]
    public void Synchronised_supplies_of_different_voltage_in_parallel_are_a_short()
    {
        var bench = new Bench().TwoWire("A", "a n", 230, "G").TwoWire("B", "b m", 120, "G");
        bench.Contact("n", "m").Contact("a", "b", "K");
        bench.Short("K").Should().BeTrue();
    }

    [Fact]
    public void A_cycle_of_three_supplies_counts()
    {
        var bench = new Bench().TwoWire("A", "a1 a2").TwoWire("B", "b1 b2").TwoWire("C", "c1 c2");
        bench.Contact("a1", "b1").Contact("b2", "c1").Contact("c2", "a2", "K");
        bench.Short().Should().BeFalse();
        bench.Short("K").Should().BeTrue();
        bench.Holds(n => n.Short("B"), "K").Should().BeTrue();
    }

    [Fact]
    public void A_supply_on_no_such_cycle_is_not_in_the_short()
    {
        var bench = new Bench().TwoWire("A", "a n").TwoWire("B", "b n").Contact("a", "n", "K");
        bench.Holds(n => n.Short("A"), "K").Should().BeTrue();
        bench.Holds(n => n.Short("B"), "K").Should().BeFalse();
    }

    [Fact]
    public void A_store_is_in_no_short()
    {
        var bench = new Bench().Direct("C", "p m", 300, new("x", null)).Contact("p", "m");
        bench.Short().Should().BeFalse();
    }

    [Fact]
    public void A_diode_from_plus_to_minus_is_a_short()
    {
        var forward = new Bench().Direct("DC", "p m").Diode("p", "m");
        forward.Short().Should().BeTrue();
        var backward = new Bench().Direct("DC", "p m").Diode("m", "p");
        backward.Short().Should().BeFalse();
        var two = new Bench().Direct("DC", "p m").Diode("p", "x").Diode("x", "m");
        two.Short().Should().BeTrue();
    }

    [Fact]
    public void Short_current_flows_in_the_loop_and_not_beside_it()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N");
        bench.Link("F1", ElementType.Thermal, "L1", "a").Link("F2", ElementType.Thermal, "L2", "b");
        bench.Link("F3", ElementType.Thermal, "L3", "c").Contact("a", "b", "K").Coil("a", "c");
        bench.Holds(n => n.CarriesShort("F1"), "K").Should().BeTrue();
        bench.Holds(n => n.CarriesShort("F2"), "K").Should().BeTrue();
        bench.Holds(n => n.CarriesShort("F3"), "K").Should().BeFalse();
        bench.Holds(n => n.CarriesShort("F1")).Should().BeFalse("no short, only load current");
        bench.Holds(n => n.CarriesShort("F1", "MAINS"), "K").Should().BeTrue();
    }

    [Fact]
    public void The_short_of_one_supply_does_not_flow_through_its_tie_to_a_like_one()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Star("GEN", "G1 G2 G3 N");
        bench.Link("F1", ElementType.Thermal, "L1", "G1").Link("F2", ElementType.Thermal, "G2", "x");
        bench.Contact("x", "G3", "K");
        bench.Holds(n => n.CarriesShort("F2"), "K").Should().BeTrue();
        bench.Holds(n => n.CarriesShort("F1"), "K").Should().BeFalse();
    }

    [Fact]
    public void A_diode_closes_the_loop_of_its_short_but_is_no_candidate()
    {
        var bench = new Bench().Direct("DC", "p m").Diode("a", "m");
        bench.Link("F", ElementType.Thermal, "p", "a");
        bench.Holds(n => n.CarriesShort("F")).Should().BeTrue();
        bench.Holds(n => n.CarriesShort("a-m")).Should().BeFalse();
    }
}
