using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>Variants of a network, and what it will not answer.</summary>
[Trait("Set", "engine")]
public sealed class NetworkTests
{
    private static Bench Bench() =>
        new Bench()
            .Star("MAINS", "L1 L2 L3 N")
            .Wire("N", "PE")
            .Contact("L1", "a", "Q")
            .Contact("a", "b", "K");

    [Fact]
    public void Elements_taken_out_neither_conduct_nor_leak()
    {
        var bench = Bench().Link("G", ElementType.Semiconductor, "L2", "c", "fired");
        var network = bench.Network.Without(["L1-a", "G"]);
        network.Live("b").IsFalse.Should().BeTrue();
        network.Live("c").IsFalse.Should().BeTrue();
        bench.Network.Live("c").IsTrue.Should().BeTrue();
    }

    [Fact]
    public void A_further_condition_of_an_element_shows_in_the_answer()
    {
        var bench = Bench();
        var states = new StateSpace(bench.Netlist());
        var level = states.SpareLevel(states.IndexOf("Q"));
        var only = new Dictionary<string, Diagram> { ["L1-a"] = states.Table.Literal(level, false) };
        var network = new Network(bench.Netlist(), states, only: only);
        network
            .Live("b")
            .Should()
            .Be(
                states.Table.AllOf(
                    states.Is("Q", "yes"),
                    states.Is("K", "yes"),
                    states.Table.Literal(level, false)
                )
            );
    }

    [Fact]
    public void Answers_within_given_assignments_are_exact_there()
    {
        var bench = Bench();
        var states = new StateSpace(bench.Netlist());
        var closed = states.Is("Q", "yes");
        var network = new Network(bench.Netlist(), states, within: closed);
        network.Live("b").Should().Be(states.Is("K", "yes"));
        var either = states.Table.Or(closed, states.Is("K", "yes"));
        var wider = new Network(bench.Netlist(), states, within: either).Live("b");
        var whole = new Network(bench.Netlist(), states).Live("b");
        states.Table.And(wider, either).Should().Be(states.Table.And(whole, either));
    }

    [Fact]
    public void Conditions_combine()
    {
        var bench = Bench();
        var both = new All([
            new Live("b"),
            new Not(new Joined("L1", "L2")),
            new Closed("L1-a"),
            new VariableIs("K", "yes"),
        ]);
        bench.Holds(both, "Q", "K").Should().BeTrue();
        bench.Holds(both, "K").Should().BeFalse();
        bench.Holds(new Any([new Live("b"), new Joined("a", "b")]), "K").Should().BeTrue();
    }

    [Fact]
    public void Quiet_is_answered_by_whoever_knows()
    {
        var network = Bench().Network;
        var alone = () => network.Of(new Quiet());
        alone.Should().Throw<ArgumentException>();
        network.Of(new Not(new Quiet()), e => e is Quiet ? Diagram.False : null).IsTrue.Should().BeTrue();
    }

    [Fact]
    public void Reached_is_what_a_conductor_that_is_on_is_joined_to()
    {
        var network = Bench().Coil("b", "c").Network;
        var (q, k) = (network.States.Is("Q", "yes"), network.States.Is("K", "yes"));
        var both = network.States.Table.And(q, k);
        network.Reached("a", "MAINS", Grade.Solid).Should().Be(q);
        network.Reached("b", "MAINS", "L1", Grade.Solid).Should().Be(both);
        network.Reached("b", "MAINS", "L2", Grade.Solid).IsFalse.Should().BeTrue();
        network.Reached("c", "MAINS", Grade.Load).IsFalse.Should().BeTrue();
        network.Reached("c", "MAINS", "L1", Grade.Loose).Should().Be(both);
        network.Active("MAINS").IsTrue.Should().BeTrue();
        var nobody = () => network.Active("NOBODY");
        nobody.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void In_one_state_every_answer_is_what_the_whole_network_says_of_it()
    {
        for (var number = 900_000; number < 900_006; number++)
        {
            var netlist = RandomPanels.Panel(number, 64);
            var states = new StateSpace(netlist);
            var network = new Network(netlist, states);
            var dice = new Random(number);
            var state = new State(netlist.Variables.Select(v => dice.Next(v.Values.Count)));
            var here = network.At(state);
            foreach (var net in netlist.Nets)
            {
                Same(here.Live(net), network.Live(net));
                Same(here.EarthTied(net), network.EarthTied(net));
            }
            foreach (var element in netlist.Elements)
                Same(here.Carries(element.Id), network.Carries(element.Id));
            foreach (var load in netlist.Loads)
                Same(here.Runs(load.Name), network.Runs(load.Name));

            void Same(Diagram mine, Diagram whole)
            {
                mine.IsConstant.Should().BeTrue();
                mine.IsTrue.Should().Be(states.Holds(whole, state), $"of panel {number}");
            }
        }
    }

    [Fact]
    public void Unknown_names_are_refused()
    {
        var network = Bench().Network;
        var net = () => network.Live("nowhere");
        var element = () => network.Carries("nothing");
        var supply = () => network.Short("nobody");
        net.Should().Throw<ArgumentException>();
        element.Should().Throw<ArgumentException>();
        supply.Should().Throw<ArgumentException>();
    }
}
