using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

[Trait("Set", "engine")]
public sealed class TraceTests
{
    [Fact]
    public void The_shortest_way_is_told_and_the_first_declared_among_equals()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE");
        bench.Contact("L1", "a").Contact("a", "b").Contact("b", "c").Contact("L2", "x").Contact("x", "c");
        bench.Link("again", ElementType.Contact, "x", "c");
        var path = bench.Trace().Live("c")!;
        path.Should().BeEquivalentTo(new ConductingPath("MAINS", "L2", ["L2", "x", "c"], ["L2-x", "x-c"]));
    }

    [Fact]
    public void A_dead_net_has_no_path() =>
        new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE").Trace().Live("N").Should().BeNull();

    [Fact]
    public void A_solid_way_is_told_before_a_shorter_loose_one()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Coil("L2", "c")
            .Contact("L1", "a")
            .Contact("a", "c");
        bench.Trace().Live("c")!.Steps.Should().Equal("L1-a", "a-c");
    }

    [Fact]
    public void The_loose_part_goes_round_what_earth_holds()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Wire("N", "PE");
        bench.Coil("L1", "N").Coil("N", "t").Coil("L2", "a").Coil("a", "b").Contact("b", "t");
        bench.Trace().Live("t")!.Steps.Should().Equal("L2-a", "a-b", "b-t");
    }

    [Fact]
    public void The_loose_part_does_not_start_where_earth_holds()
    {
        var bench = new Bench().Star("MAINS", "L1 L2 L3 N").Series("N", "PE");
        bench.Coil("PE", "t").Coil("L2", "a").Coil("a", "b").Contact("b", "t");
        bench.Trace().Live("t")!.Steps.Should().Equal("L2-a", "a-b", "b-t");
    }

    [Fact]
    public void A_coupling_is_one_step()
    {
        var bench = new Bench()
            .TwoWire("FOREIGN", "f1 f2")
            .Couple("T1", false, "p1 p2", "f1 f2")
            .Contact("p1", "q");
        bench.Trace().Live("q")!.Steps.Should().Equal("T1", "p1-q");
        bench.Trace().Live("q")!.Nets.Should().Equal("f1", "p1", "q");
    }

    [Fact]
    public void One_supply_can_be_asked_for()
    {
        var bench = new Bench()
            .TwoWire("A", "a n")
            .TwoWire("B", "b m")
            .Contact("a", "x")
            .Contact("b", "y")
            .Contact("y", "x");
        bench.Trace().Live("x", "B")!.Steps.Should().Equal("b-y", "y-x");
        bench.Trace().Live("x", "A")!.Steps.Should().Equal("a-x");
        bench.Trace().Live("n", "B").Should().BeNull();
    }

    [Fact]
    public void Both_sides_of_what_is_energised_are_told()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Contact("L1", "x")
            .Contact("L2", "y")
            .Contact("N", "z")
            .Contact("z", "y2");
        bench
            .Trace()
            .Energised("x", "y2", Grade.Solid, 200, 250)
            .Select(p => p.Conductor)
            .Should()
            .Equal("L1", "N");
        bench.Trace().Energised("x", "y2", Grade.Solid, 300, null).Should().BeEmpty();
        bench.Trace().Energised("x", "y", Grade.Solid, 300, null).Should().HaveCount(2);
    }

    [Fact]
    public void A_short_is_told_from_conductor_to_conductor()
    {
        var bench = new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Contact("L1", "a")
            .Contact("a", "b", "K")
            .Contact("L2", "b");
        bench.Trace("K").Short("MAINS").Single().Steps.Should().Equal("L1-a", "a-b", "L2-b");
        bench.Trace().Short("MAINS").Should().BeEmpty();
    }

    [Fact]
    public void A_cycle_of_three_supplies_is_told_join_by_join()
    {
        var bench = new Bench().TwoWire("A", "a1 a2").TwoWire("B", "b1 b2").TwoWire("C", "c1 c2");
        bench.Contact("a1", "b1").Contact("b2", "c1").Contact("c2", "a2");
        bench.Trace().Short("A").SelectMany(p => p.Steps).Should().BeEquivalentTo("a1-b1", "b2-c1", "c2-a2");
    }

    [Fact]
    public void A_diode_short_passes_the_diode()
    {
        var bench = new Bench().Direct("DC", "p m").Contact("p", "a").Diode("a", "m");
        bench.Trace().Short("DC").Single().Steps.Should().Equal("p-a", "a-m");
        bench.Trace().Short("DC").Single().Nets.Should().Equal("p", "a", "m");
    }

    [Fact]
    public void Every_live_net_of_random_panels_has_a_path_of_conducting_steps()
    {
        for (var number = 0; number < 60; number++)
        {
            var netlist = RandomPanels.Panel(number, 16);
            var states = new StateSpace(netlist);
            var network = new Network(netlist, states);
            var state = states.First(states.Domain)!;
            for (var v = 0; v < netlist.Variables.Count; v++)
                state = state.With(v, (number + v) % netlist.Variables[v].Values.Count);
            var trace = new Trace(network, state);
            foreach (var net in netlist.Nets)
            {
                var path = trace.Live(net);
                (path is not null)
                    .Should()
                    .Be(states.Holds(network.Live(net), state), "{0} of {1}", net, number);
                if (path is null)
                    continue;
                path.Nets[^1].Should().Be(net);
                path.Nets.Should().HaveCount(path.Steps.Count + 1);
                path.Steps.All(Passes).Should().BeTrue("{0} of {1}", net, number);
            }
            foreach (var supply in netlist.Supplies.Select(s => s.Name))
                (trace.Short(supply).Count > 0).Should().Be(states.Holds(network.Short(supply), state));

            bool Passes(string step) =>
                netlist.Elements.FirstOrDefault(e => e.Id == step) is not { } element
                || states.Holds(network.Closed(step), state)
                || element.Type == ElementType.Semiconductor;
        }
    }
}
