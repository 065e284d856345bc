using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Live by a sweep over the levels against live by elimination: the same diagrams, of random panels and meshes.</summary>
public sealed class SweepTests
{
    private const int Panels = 300;

    [Fact]
    public void A_sweep_over_random_panels_comes_to_what_elimination_does() =>
        Enumerable
            .Range(0, Panels)
            .Sum(number =>
                Compare(number, number % 3 == 0 ? RandomMeshes.Mesh(number) : RandomPanels.Panel(number, 128))
            )
            .Should()
            .BeGreaterThan(3 * Panels);

    [Fact]
    public void A_sweep_over_random_graphs_comes_to_what_elimination_does() =>
        CompareGraphs(Enumerable.Range(0, 2_000)).Should().BeGreaterThan(1_000);

    /// <summary>The same at a glance.</summary>
    [Theory, Trait("Set", "engine")]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_sweep_over_a_few_of_them_does(int part)
    {
        CompareGraphs(Enumerable.Range(2_000 + 100 * part, 100)).Should().BeGreaterThan(40);
        for (var number = Panels + 3 * part; number < Panels + 3 * part + 3; number++)
            Compare(number, RandomPanels.Panel(number, 32)).Should().BeGreaterThanOrEqualTo(0);
    }

    /// <summary>How many nets are live in some states and dead in others.</summary>
    private static int Compare(int number, Netlist netlist)
    {
        var varying = 0;
        var network = new Network(netlist, new StateSpace(netlist));
        foreach (var net in netlist.Nets)
        {
            network.Live([net]).Should().Be(network.Live(net), $"{net} of panel {number}");
            varying += network.Live(net).IsConstant ? 0 : 1;
        }
        var some = netlist.Nets.Where((_, i) => i % 3 == number % 3).ToArray();
        var any = network.States.Table.AnyOf(some.Select(network.Live));
        network.Live(some).Should().Be(any, $"nets of panel {number}");
        return varying;
    }

    /// <summary>How many graphs are reached in some states and not in others.</summary>
    private static int CompareGraphs(IEnumerable<int> numbers)
    {
        var swept = 0;
        foreach (var number in numbers)
        {
            var dice = new System.Random(number);
            var table = new DiagramTable();
            var graph = new GuardedGraph(table, dice.Next(2, 10));
            for (var links = dice.Next(1, 16); links > 0; links--)
                graph.Join(dice.Next(graph.Nodes), dice.Next(graph.Nodes), Condition(table, dice));
            var sources = Enumerable
                .Range(0, dice.Next(1, 3))
                .Select(_ => KeyValuePair.Create(dice.Next(graph.Nodes), Condition(table, dice)))
                .ToArray();
            int[] targets = [dice.Next(graph.Nodes), dice.Next(graph.Nodes)];
            var spread = new Elimination(table, graph).Spread(sources);
            if (Sweep.Reached(table, graph, sources, targets) is not { } reached)
                continue;
            reached.Should().Be(table.AnyOf(targets.Select(t => spread[t])), $"graph {number}");
            swept += reached.IsConstant ? 0 : 1;
        }
        return swept;
    }

    /// <summary>A variable or its contrary, now and then two of them together or either, seldom always.</summary>
    private static Diagram Condition(DiagramTable table, System.Random dice) =>
        dice.Next(12) switch
        {
            0 => Diagram.True,
            1 or 2 => table.And(Literal(table, dice), Literal(table, dice)),
            3 or 4 => table.Or(Literal(table, dice), Literal(table, dice)),
            _ => Literal(table, dice),
        };

    private static Diagram Literal(DiagramTable table, System.Random dice) =>
        table.Literal(dice.Next(10), dice.Next(4) > 0);
}
