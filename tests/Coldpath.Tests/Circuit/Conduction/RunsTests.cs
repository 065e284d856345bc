using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

[Trait("Set", "engine")]
public sealed class RunsTests
{
    private static Bench Motor(Bench bench) =>
        bench.Coil("u", "v").Coil("v", "w").Coil("w", "u").Load("M", "u-v v-w w-u", Bench.Mode("u v w"));

    private static Runs Runs(Turning turns = Turning.Any) => new("M", turns);

    private static Bench Reversing() =>
        Motor(
            new Bench()
                .Star("MAINS", "L1 L2 L3 N")
                .Contact("L1", "u", "F")
                .Contact("L2", "v", "F")
                .Contact("L3", "w", "F")
                .Link("r1", ElementType.Contact, "L3", "u", "R")
                .Link("r2", ElementType.Contact, "L2", "v", "R")
                .Link("r3", ElementType.Contact, "L1", "w", "R")
        );

    [Fact]
    public void Direction_is_the_order_of_the_phases()
    {
        var bench = Reversing();
        bench.Holds(Runs(Turning.Forward), "F").Should().BeTrue();
        bench.Holds(Runs(Turning.Reverse), "F").Should().BeFalse();
        bench.Holds(Runs(Turning.Reverse), "R").Should().BeTrue();
        bench.Holds(Runs(), "R").Should().BeTrue();
        bench.Holds(Runs(), "F", "R").Should().BeFalse("all three are shorted");
        bench.Holds(Runs()).Should().BeFalse();
    }

    [Fact]
    public void Two_phases_are_single_phasing_and_none_stands_live()
    {
        var bench = Motor(
            new Bench()
                .Star("MAINS", "L1 L2 L3 N")
                .Wire("N", "PE")
                .Contact("L1", "u", "A")
                .Contact("L2", "v", "B")
                .Contact("L3", "w", "C")
        );
        bench.Holds(n => n.SinglePhasing("M"), "A", "B").Should().BeTrue();
        bench.Holds(n => n.Abnormal("M"), "A", "B").Should().BeTrue();
        bench.Holds(Runs(), "A", "B").Should().BeFalse();
        bench.Holds(n => n.StandsLive("M"), "A").Should().BeTrue();
        bench.Holds(n => n.StandsLive("M"), "A", "B").Should().BeFalse();
        bench.Holds(n => n.StandsLive("M")).Should().BeFalse();
        bench.Holds(n => n.Abnormal("M"), "A", "B", "C").Should().BeFalse();
    }

    [Fact]
    public void Starting_resistors_carry_the_feed_on()
    {
        var bench = Motor(
            new Bench()
                .Star("MAINS", "L1 L2 L3 N")
                .Series("L1", "u")
                .Series("L2", "v")
                .Series("L3", "w")
                .Link("bridge", ElementType.Contact, "u", "v", "K")
        );
        bench.Holds(Runs(Turning.Forward)).Should().BeTrue();
        bench.Holds(Runs(), "K").Should().BeFalse();
    }

    [Fact]
    public void Ways_that_share_a_component_do_not_feed()
    {
        var bench = Motor(
            new Bench()
                .Star("MAINS", "L1 L2 L3 N")
                .Contact("L3", "w")
                .Series("L1", "m")
                .Series("L2", "m", "both")
                .Series("m", "u")
                .Series("m", "v")
                .Series("L2", "v", "own")
        );
        bench.Holds(Runs(), "both").Should().BeFalse("both ways pass m");
        bench.Holds(Runs(), "own").Should().BeTrue();
    }

    [Fact]
    public void An_autotransformer_feeds_through_its_taps()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N");
        foreach (var (line, end) in new[] { ("L1", "u"), ("L2", "v"), ("L3", "w") })
            bench
                .Series(line, $"{end}tap")
                .Series($"{end}tap", $"{end}star")
                .Contact($"{end}tap", end)
                .Contact($"{end}star", "star", "S");
        Motor(bench);
        bench.Holds(Runs(Turning.Forward), "S").Should().BeTrue();
        bench.Holds(Runs(Turning.Reverse), "S").Should().BeFalse("ways round by the star share it");
    }

    [Fact]
    public void Never_through_windings()
    {
        var bench = Motor(
            new Bench().Star("MAINS", "L1 L2 L3 N").Coil("L1", "u").Contact("L2", "v").Contact("L3", "w")
        );
        bench.Holds(Runs()).Should().BeFalse();
    }

    [Fact]
    public void Terminals_that_must_be_joined_or_apart_are()
    {
        var bench = new Bench().Star("MAINS", "u v w N").Coil("u", "x").Coil("v", "y").Coil("w", "z");
        bench.Contact("x", "y", "S").Contact("y", "z", "S").Contact("x", "PE", "E");
        bench.Load("M", "u-x v-y w-z", Bench.Mode("u v w", joined: "x=y y=z", apart: "x=PE"));
        bench.Holds(Runs(), "S").Should().BeTrue();
        bench.Holds(Runs()).Should().BeFalse();
        bench.Holds(Runs(), "S", "E").Should().BeFalse();
    }

    [Fact]
    public void Polarity_turns_a_direct_current_motor()
    {
        var bench = new Bench()
            .Direct("DC", "p m")
            .Contact("p", "a", "F")
            .Contact("m", "b", "F")
            .Contact("p", "b", "R")
            .Contact("m", "a", "R");
        bench.Coil("a", "b").Load("M", "a-b", Bench.Mode("a b"));
        bench.Holds(Runs(Turning.Forward), "F").Should().BeTrue();
        bench.Holds(Runs(Turning.Reverse), "R").Should().BeTrue();
        bench.Holds(Runs(Turning.Forward), "R").Should().BeFalse();
    }

    [Fact]
    public void Two_alternating_conductors_have_no_order_so_the_connection_says_how_it_turns()
    {
        var bench = new Bench()
            .TwoWire("T", "a b")
            .Coil("a", "b")
            .Load("M", "a-b", Bench.Mode("b a", turns: Turning.Reverse));
        bench.Holds(Runs(Turning.Reverse)).Should().BeTrue();
        bench.Holds(Runs(Turning.Forward)).Should().BeFalse();
    }

    [Fact]
    public void Conductors_of_two_supplies_do_not_make_one_feed()
    {
        var bench = Motor(
            new Bench()
                .Star("A", "L1 L2 L3 N")
                .Star("B", "M1 M2 M3 O", "A")
                .Contact("L1", "u")
                .Contact("L2", "v")
                .Contact("M3", "w")
        );
        bench.Holds(Runs()).Should().BeFalse();
    }

    [Fact]
    public void A_mode_turns_the_other_way_when_it_says_so()
    {
        var bench = new Bench()
            .Star("MAINS", "u v w N")
            .Coil("u", "v")
            .Load("M", "u-v", Bench.Mode("u v w", turns: Turning.Reverse));
        bench.Holds(Runs(Turning.Reverse)).Should().BeTrue();
        bench.Holds(Runs(Turning.Forward)).Should().BeFalse();
    }
}
