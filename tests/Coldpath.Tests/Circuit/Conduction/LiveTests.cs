using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

[Trait("Set", "engine")]
public sealed class LiveTests
{
    private static Bench Mains() => new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE");

    private static LiveBy? How(Bench bench, string net, params string[] on)
    {
        var ways = Enum.GetValues<LiveBy>().Where(by => bench.Holds(n => n.Live(net, by), on)).ToArray();
        ways.Length.Should().Be(bench.Live(net, on) ? 1 : 0);
        return ways.Length == 0 ? null : ways[0];
    }

    [Fact]
    public void Closed_elements_and_series_elements_make_solidly_live()
    {
        var bench = Mains().Contact("L1", "a", "K").Series("a", "b");
        How(bench, "b", "K").Should().Be(LiveBy.Solid);
        How(bench, "b").Should().BeNull();
    }

    [Fact]
    public void A_load_and_a_blocking_semiconductor_make_live_through_a_load()
    {
        var bench = Mains().Coil("L1", "a", "whole");
        bench.Link("G", ElementType.Semiconductor, "L2", "b", "fired");
        How(bench, "a", "whole").Should().Be(LiveBy.Load);
        How(bench, "a").Should().BeNull("the winding is open");
        How(bench, "b").Should().Be(LiveBy.Load);
        How(bench, "b", "fired").Should().Be(LiveBy.Solid);
    }

    [Fact]
    public void A_semiconductor_leaks_only_as_its_guard_says_when_it_has_one()
    {
        var bench = Mains();
        bench.Link("G", ElementType.Semiconductor, "L2", "b", bench.On("fired"), bench.On("leaky"));
        bench.Live("b").Should().BeFalse();
        bench.Live("b", "leaky").Should().BeTrue();
    }

    [Fact]
    public void A_transformer_worked_backwards_is_backfeed()
    {
        var bench = Mains()
            .Contact("L1", "p1", "Q")
            .TwoWire("FOREIGN", "f1 f2", 110)
            .Contact("f1", "s1", "J");
        bench.Transformer("T1", "p1 p2", "s1 s2", new Energised("p1", "p2", Grade.Solid, 100, null));
        How(bench, "p1", "J").Should().Be(LiveBy.Backfeed);
        How(bench, "p1").Should().BeNull();
        How(bench, "p1", "Q").Should().Be(LiveBy.Solid);
        bench.Holds(n => n.LiveFrom("p1", "FOREIGN"), "J").Should().BeTrue();
        bench.Holds(n => n.LiveFrom("p1", "MAINS"), "J").Should().BeFalse();
    }

    [Fact]
    public void An_earth_tied_secondary_passes_nothing_back()
    {
        var bench = Mains().TwoWire("FOREIGN", "f1 PE", 110).Contact("f1", "s1", "J");
        bench.Transformer("T1", "p1 p2", "s1 PE", Expression.False);
        bench.Live("p1").Should().BeFalse();
        bench.Live("p1", "J").Should().BeTrue();
    }

    [Fact]
    public void Only_the_first_winding_drives_when_declared_so()
    {
        var bench = Mains()
            .Contact("L1", "in1", "A")
            .Contact("L2", "out1", "B")
            .Couple("D", true, "in1 in2", "out1 out2");
        bench.Live("out2", "A").Should().BeTrue();
        bench.Live("in2", "A").Should().BeFalse();
        bench.Live("in1", "B").Should().BeFalse();
        bench.Live("out2", "B").Should().BeFalse();
    }

    [Fact]
    public void An_idle_speed_winding_of_a_running_motor_is_live()
    {
        var bench = Mains()
            .Contact("L1", "u", "K")
            .Coil("u", "v")
            .Coil("iu", "iv")
            .Couple("M1", false, "u v", "iu iv");
        How(bench, "iu", "K").Should().Be(LiveBy.Backfeed);
        bench.Live("iu").Should().BeFalse();
    }

    [Fact]
    public void The_loose_part_passes_no_earth_tied_net()
    {
        var bench = Mains().Coil("L1", "N1").Wire("N", "N1", "whole").Coil("N1", "b");
        bench.Live("b", "whole").Should().BeFalse("the neutral between holds it");
        bench.Live("b").Should().BeTrue();
    }

    [Fact]
    public void Load_reach_goes_along_any_path()
    {
        var bench = Mains().Fault("L1", "PE", "touch").Fault("PE", "frame");
        bench.Live("frame", "touch").Should().BeTrue();
        bench.Live("PE", "touch").Should().BeFalse();
        bench.Live("frame").Should().BeFalse();
    }

    [Fact]
    public void Extra_low_voltage_is_said_only_when_no_other_supply_comes()
    {
        var bench = new Bench()
            .TwoWire("SELV", "a b", 24, elv: true)
            .TwoWire("MAINS", "L N")
            .Contact("a", "c", "A")
            .Contact("L", "c", "B");
        bench.Holds(n => n.ExtraLowOnly("c"), "A").Should().BeTrue();
        bench.Holds(n => n.ExtraLowOnly("c"), "A", "B").Should().BeFalse();
        bench.Holds(n => n.ExtraLowOnly("c")).Should().BeFalse("it is dead");
    }

    [Fact]
    public void A_store_makes_live_and_is_said_to_be_one()
    {
        var bench = Mains();
        bench
            .Direct("C1", "c1 c2", 300, new("C1.charged", null), bench.On("C1.charged"))
            .Contact("L1", "c1", "Q");
        How(bench, "c1", "C1.charged").Should().Be(LiveBy.Stored);
        How(bench, "c1", "C1.charged", "Q").Should().Be(LiveBy.Solid);
        How(bench, "c1").Should().BeNull();
    }

    [Fact]
    public void A_lost_supply_makes_nothing_live()
    {
        var bench = new Bench();
        bench.TwoWire("MAINS", "L N", present: bench.On("there")).Contact("L", "a");
        bench.Live("a").Should().BeFalse();
        bench.Live("a", "there").Should().BeTrue();
    }

    [Fact]
    public void A_diode_passes_plus_forwards_and_minus_backwards()
    {
        var bench = new Bench().Direct("DC", "p m").Wire("m", "PE", "bond");
        bench.Diode("p", "c").Diode("a", "p");
        bench.Live("c", "bond").Should().BeTrue();
        How(bench, "c", "bond").Should().Be(LiveBy.Solid);
        How(bench, "a", "bond").Should().Be(LiveBy.Load, "loose reach passes a diode both ways");
    }

    [Fact]
    public void Minus_passes_a_diode_backwards()
    {
        var bench = new Bench().Direct("DC", "p m").Wire("p", "PE").Diode("m", "c").Diode("a", "m");
        How(bench, "a").Should().Be(LiveBy.Solid);
        How(bench, "c").Should().Be(LiveBy.Load);
    }

    [Fact]
    public void Alternating_current_passes_a_diode_both_ways()
    {
        var bench = Mains().Diode("L1", "c").Diode("a", "L1");
        How(bench, "a").Should().Be(LiveBy.Solid);
        How(bench, "c").Should().Be(LiveBy.Solid);
    }
}
