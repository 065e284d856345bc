using System.Numerics;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// The rule for shorts in one state: solid components are nodes, and each two conductors of a supply are an edge
/// with the voltage between them. In a block of which some cycle does not sum to zero, every edge lies on such a
/// cycle, so the supplies of that block are part of a short.
/// </summary>
internal static class VoltageCycles
{
    /// <summary>Volts; a smaller sum is zero.</summary>
    private const double Least = 1e-6;

    /// <param name="placed">The conductors that are on, with the solid component each lies in.</param>
    /// <returns>The supplies that are part of a short.</returns>
    public static IEnumerable<int> Shorted(IReadOnlyList<(Source Source, int Component)> placed)
    {
        var edges = Edges(placed).ToArray();
        var nodes = placed.Select(p => p.Component).DefaultIfEmpty(-1).Max() + 1;
        var blocks = new Blocks(nodes, edges.Select(e => (e.A, e.B)));
        return edges
            .Index()
            .GroupBy(e => blocks.OfEdge[e.Index], e => e.Item)
            .Where(block => !SumsToZero([.. block]))
            .SelectMany(block => block.Select(e => e.Supply))
            .Distinct()
            .Order();
    }

    /// <summary>
    /// The conductors that drive the current of a short: the supply's own node, joined to each of its conductors, and
    /// the conductor lie on a cycle that does not sum to zero. A supply that is part of a short by the voltage between
    /// two conductors need not drive it by either of them.
    /// </summary>
    public static IEnumerable<Source> Driving(IReadOnlyList<(Source Source, int Component)> placed)
    {
        var hubs = placed.Select(p => p.Component).DefaultIfEmpty(-1).Max() + 1;
        var nodes = hubs + placed.Select(p => p.Source.SupplyIndex).DefaultIfEmpty(-1).Max() + 1;
        Edge[] edges = [.. placed.Select(p => Spoke(p.Source, hubs + p.Source.SupplyIndex, p.Component))];
        var blocks = new Blocks(nodes, edges.Select(e => (e.A, e.B)));
        return placed
            .Index()
            .GroupBy(p => blocks.OfEdge[p.Index])
            .Where(block => !SumsToZero([.. block.Select(p => edges[p.Index])]))
            .SelectMany(block => block.Select(p => p.Item.Source));
    }

    private static Edge Spoke(Source source, int hub, int component) =>
        new(source.SupplyIndex, source.Supply.Group, hub, component, source.Volts);

    private static IEnumerable<Edge> Edges(IReadOnlyList<(Source Source, int Component)> placed)
    {
        for (var i = 0; i < placed.Count; i++)
        for (var j = i + 1; j < placed.Count; j++)
        {
            var ((first, a), (second, b)) = (placed[i], placed[j]);
            if (first.SupplyIndex == second.SupplyIndex)
                yield return new(first.SupplyIndex, first.Supply.Group, a, b, second.Volts - first.Volts);
        }
    }

    /// <summary>
    /// The supplies are synchronised, and potentials can be given to the block's nodes so that every edge has its
    /// voltage.
    /// </summary>
    private static bool SumsToZero(IReadOnlyList<Edge> block)
    {
        if (block.Select(e => e.Group).Distinct().Count() > 1)
            return false;
        var potentials = new Dictionary<int, Complex> { [block[0].A] = Complex.Zero };
        while (
            block.FirstOrDefault(e => potentials.ContainsKey(e.A) != potentials.ContainsKey(e.B)) is { } edge
        )
            if (potentials.TryGetValue(edge.A, out var below))
                potentials[edge.B] = below + edge.Volts;
            else
                potentials[edge.A] = potentials[edge.B] - edge.Volts;
        return block.All(e => Complex.Abs(potentials[e.B] - potentials[e.A] - e.Volts) < Least);
    }

    private sealed record Edge(int Supply, string Group, int A, int B, Complex Volts);
}
