using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

[Trait("Set", "engine")]
public sealed class CarriesTests
{
    [Fact]
    public void A_coil_and_all_in_its_circuit_carry()
    {
        var bench = new Bench().TwoWire("T", "L N").Contact("L", "a", "K").Coil("a", "N");
        bench.Carries("L-a", "K").Should().BeTrue();
        bench.Carries("a-N", "K").Should().BeTrue();
        bench.Carries("a-N").Should().BeFalse();
    }

    [Fact]
    public void A_dead_end_carries_nothing()
    {
        var bench = new Bench().TwoWire("T", "L N").Contact("L", "a").Coil("a", "b").Coil("L", "N");
        bench.Carries("L-a").Should().BeFalse();
        bench.Carries("a-b").Should().BeFalse();
    }

    [Fact]
    public void A_ring_on_one_conductor_carries_nothing()
    {
        var bench = new Bench()
            .TwoWire("T", "L N")
            .Contact("L", "a")
            .Contact("L", "b")
            .Contact("a", "b")
            .Coil("a", "N", "K");
        bench.Carries("a-b").Should().BeFalse("both ends are reached, but by one conductor");
        bench.Carries("a-b", "K").Should().BeTrue("it shares the coil's current");
    }

    [Fact]
    public void A_bridge_carries_even_when_balanced()
    {
        var bench = new Bench()
            .TwoWire("T", "L N")
            .Coil("L", "a")
            .Coil("L", "b")
            .Coil("a", "N")
            .Coil("b", "N")
            .Coil("a", "b");
        bench.Carries("a-b").Should().BeTrue();
    }

    [Fact]
    public void A_bridge_behind_one_net_carries_nothing()
    {
        var bench = new Bench()
            .TwoWire("T", "L N")
            .Coil("L", "m")
            .Contact("m", "a")
            .Contact("m", "b")
            .Coil("a", "b");
        bench.Carries("a-b").Should().BeFalse();
    }

    [Fact]
    public void A_load_with_both_ends_joined_carries_nothing()
    {
        var bench = new Bench()
            .TwoWire("T", "L N")
            .Coil("L", "m")
            .Link("bridge", ElementType.Contact, "L", "m", "K")
            .Coil("m", "N");
        bench.Carries("L-m").Should().BeTrue();
        bench.Carries("L-m", "K").Should().BeFalse();
        bench.Carries("m-N", "K").Should().BeTrue();
    }

    [Fact]
    public void Leakage_carries_nothing()
    {
        var bench = new Bench().TwoWire("T", "L N").Coil("m", "N");
        bench.Link("G", ElementType.Semiconductor, "L", "m", "fired");
        bench.Carries("m-N").Should().BeFalse();
        bench.Carries("m-N", "fired").Should().BeTrue();
    }

    [Fact]
    public void A_lost_phase_still_drives_the_other_two_windings()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Contact("L3", "w", "F3");
        bench.Coil("L1", "L2").Coil("L2", "w").Coil("w", "L1");
        bench.Carries("L2-w").Should().BeTrue();
        bench.Carries("L3-w").Should().BeFalse();
        bench.Carries("L3-w", "F3").Should().BeTrue();
    }

    [Fact]
    public void Two_supplies_with_one_common_point_exchange_no_current()
    {
        var bench = new Bench()
            .TwoWire("A", "a n")
            .TwoWire("B", "b m")
            .Contact("n", "m")
            .Contact("a", "b", "K");
        bench.Carries("n-m").Should().BeFalse();
        bench.Carries("n-m", "K").Should().BeTrue();
    }

    [Fact]
    public void A_store_drives_no_current_here()
    {
        var bench = new Bench().Direct("C", "p m", 300, new("c", null)).Coil("p", "m");
        bench.Carries("p-m").Should().BeFalse();
    }

    [Fact]
    public void Current_returns_through_earth_where_it_is_bonded()
    {
        var bench = new Bench().TwoWire("T", "L N").Wire("N", "PE", "bond").Coil("L", "PE");
        bench.Carries("L-PE", "bond").Should().BeTrue();
        bench.Carries("L-PE").Should().BeFalse();
    }
}
