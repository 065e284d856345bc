using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>
/// The bridge network of the reliability textbooks, its edges as switches: minimal path sets {1,4}, {2,5}, {1,3,5}, {2,3,4},
/// and a probability of 0.97848 that the ends are connected when each edge is closed with probability 0.9 (recomputed by
/// brute force).
/// </summary>
[Trait("Set", "engine")]
public sealed class BridgeTests
{
    private static readonly (string Name, string A, string B)[] Edges =
    [
        ("1", "L1", "n1"),
        ("2", "L1", "n2"),
        ("3", "n1", "n2"),
        ("4", "n1", "n3"),
        ("5", "n2", "n3"),
    ];

    private readonly StateSpace space;
    private readonly Diagram live;
    private readonly Diagram swept;

    public BridgeTests()
    {
        var board = new Board();
        foreach (var (name, a, b) in Edges)
            board.Switch(name, "open", "closed").Contact(a, b, name, "closed");
        var netlist = board.Build();
        space = new(netlist);
        var network = new Network(netlist, space);
        live = network.Live("n3");
        swept = network.Live(["n3"]);
    }

    [Fact]
    public void Its_minimal_path_sets_are_the_published_ones()
    {
        var names = Edges.ToDictionary(e => space.LevelsOf(space.IndexOf(e.Name)).Single(), e => e.Name);
        new MinimalSets(space.Table, live)
            .Cheapest([.. names.Keys.OrderBy(level => names[level])])
            .Select(set => string.Join(",", set.Select(level => names[level])))
            .Should()
            .Equal("1,4", "2,5", "1,3,5", "2,3,4");
    }

    [Fact]
    public void Its_ends_are_connected_with_the_published_probability() =>
        Probability(live, closed: 0.9).Should().BeApproximately(0.97848, 1e-12);

    [Fact]
    public void Swept_it_is_the_same_diagram() => swept.Should().Be(live);

    private double Probability(Diagram f, double closed) =>
        f.IsTrue ? 1
        : f.IsFalse ? 0
        : closed * Probability(space.Table.High(f), closed)
            + (1 - closed) * Probability(space.Table.Low(f), closed);
}
