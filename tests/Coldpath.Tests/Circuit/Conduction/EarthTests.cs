using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>Tied hard, bonded, earthed, earth-tied.</summary>
[Trait("Set", "engine")]
public sealed class EarthTests
{
    private static Bench Wye() => new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE", "bond");

    [Fact]
    public void Conductors_alone_tie_hard()
    {
        var bench = Wye().Wire("N", "n1").Contact("n1", "n2", "K").Fault("n1", "n3");
        bench.Holds(n => n.TiedHard("n1"), "bond").Should().BeTrue();
        bench.Holds(n => n.TiedHard("n1")).Should().BeFalse();
        bench.Holds(n => n.TiedHard("n2"), "bond", "K").Should().BeFalse();
        bench.Holds(n => n.Bonded("n2"), "bond", "K").Should().BeTrue();
        bench.Holds(n => n.Bonded("n2"), "bond").Should().BeFalse();
        bench.Holds(n => n.Bonded("n3"), "bond").Should().BeFalse("a fault bonds nothing");
    }

    [Fact]
    public void A_bonded_neutral_is_earth_tied_and_dead_with_a_coil_on_it()
    {
        var bench = Wye().Contact("N", "n", "Q").Coil("L1", "n");
        bench.EarthTied("n", "bond", "Q").Should().BeTrue();
        bench.Live("n", "bond", "Q").Should().BeFalse();
        bench.Live("n", "bond").Should().BeTrue("the return is broken");
        bench.Live("N", "bond").Should().BeFalse();
        bench.Live("N").Should().BeTrue("without its bond the neutral is an unearthed conductor");
    }

    [Fact]
    public void A_local_electrode_ties_nothing()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE").Series("PE", "frame");
        bench.EarthTied("frame").Should().BeFalse();
        bench.Live("frame").Should().BeFalse("no unearthed conductor comes to it");
    }

    [Fact]
    public void Resistance_earthing_earths_no_conductor()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Series("N", "PE").Coil("PE", "hanging", "K");
        bench.Live("N").Should().BeTrue();
        bench.Live("PE").Should().BeFalse("earth itself is tied");
        bench.Live("hanging", "K").Should().BeFalse("what hangs on earth by a coil is held by it");
    }

    [Fact]
    public void A_corner_earthed_delta_has_two_live_phases()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3").Wire("L2", "PE");
        bench.Live("L1").Should().BeTrue();
        bench.Live("L2").Should().BeFalse();
        bench.Live("L3").Should().BeTrue();
    }

    [Fact]
    public void An_unearthed_phase_that_touches_earth_stays_live()
    {
        var bench = new Bench().Star("IT", "L1 L2 L3").Fault("L1", "PE", "touch");
        bench.Live("L1", "touch").Should().BeTrue();
        bench.Live("PE", "touch").Should().BeFalse();
        bench.Live("L2", "touch").Should().BeTrue();
    }

    [Fact]
    public void A_permanent_contact_earths_a_phase_of_an_unearthed_system()
    {
        var bench = new Bench().Star("IT", "L1 L2 L3").Contact("L1", "PE", "K");
        bench.Live("L1", "K").Should().BeFalse();
        bench.Live("L2", "K").Should().BeTrue();
        bench.Live("L1").Should().BeTrue();
    }

    [Fact]
    public void Two_wires_of_an_unearthed_secondary_that_touch_earth_do_not_hide_each_other()
    {
        var bench = new Bench().TwoWire("T", "x1 x2").Contact("x1", "PE", "A").Contact("x2", "PE", "B");
        bench.Live("x1", "A").Should().BeFalse();
        bench.Live("x2", "A").Should().BeTrue();
        bench.Live("x1", "A", "B").Should().BeTrue();
        bench.Live("x2", "A", "B").Should().BeTrue();
        bench.EarthTied("PE", "A", "B").Should().BeTrue("earth is tied hard");
    }

    [Fact]
    public void The_one_that_is_tied_hard_stays_earthed()
    {
        var bench = new Bench()
            .TwoWire("T", "x1 x2")
            .Contact("x1", "m", "A")
            .Contact("m", "PE")
            .Wire("x2", "PE");
        bench.Live("x2", "A").Should().BeFalse();
        bench.Live("x1", "A").Should().BeTrue("both are bonded, and only the other is tied hard");
        bench.Live("m", "A").Should().BeTrue();
        bench.Live("m").Should().BeFalse();
    }

    [Fact]
    public void Opening_an_earthed_conductor_can_make_live()
    {
        var bench = Wye().Contact("N", "n", "Q").Coil("L1", "n");
        bench.Live("n", "bond", "Q").Should().BeFalse();
        bench.Live("n", "bond").Should().BeTrue();
    }

    [Fact]
    public void A_conductor_that_is_away_does_not_unearth_the_other()
    {
        var bench = new Bench();
        bench.TwoWire("T", "x1 x2", present: bench.On("there")).Contact("x1", "PE").Contact("x2", "PE", "B");
        bench.Live("x1", "there", "B").Should().BeTrue();
        bench.Live("x1", "B").Should().BeFalse();
    }

    [Fact]
    public void Two_conductors_both_tied_hard_both_stay_earthed()
    {
        var bench = new Bench()
            .TwoWire("T", "x1 x2")
            .Wire("x1", "PE", "A")
            .Wire("x2", "PE")
            .Series("PE", "frame");
        bench.Live("frame", "A").Should().BeFalse();
        bench.Live("x1", "A").Should().BeFalse();
        var contacts = new Bench()
            .TwoWire("T", "x1 x2")
            .Contact("x1", "PE")
            .Contact("x2", "PE")
            .Series("PE", "frame");
        contacts.Live("frame").Should().BeTrue("neither is earthed, and load reach goes through earth");
    }

    [Fact]
    public void An_unearthed_conductor_comes_to_a_bonded_net_through_a_diode_in_its_own_direction()
    {
        var bench = new Bench()
            .Direct("DC", "p m")
            .Contact("n", "PE")
            .Diode("p", "n")
            .Contact("k", "PE")
            .Diode("k", "p");
        bench.EarthTied("n").Should().BeFalse("plus comes forwards");
        bench.EarthTied("k").Should().BeTrue("but not backwards");
    }
}
