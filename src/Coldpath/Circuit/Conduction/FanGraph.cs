using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Asks of a guarded graph whether a hub is joined to the two ends of a pair by ways that share no node but the hub:
/// by Menger's theorem, whether whatever other node is taken out, the hub still reaches one of the ends.
/// </summary>
/// <remarks>
/// Only the block that holds the hub and the pair counts, since both lie on one simple cycle; it is made small before
/// nodes are taken out, see <see cref="FanCore"/>.
/// </remarks>
internal sealed class FanGraph
{
    private readonly DiagramTable table;
    private readonly GuardedGraph graph;
    private readonly (int A, int B)[] named;
    private readonly (int A, int B)[] edges;
    private readonly Dictionary<(int A, int B), int> edgeOf = [];
    private readonly Blocks blocks;
    private readonly Dictionary<(int Hub, int Block), FanCore> whole = [];
    private readonly Dictionary<(int Hub, int Block), FanCore> reduced = [];
    private readonly Dictionary<(int Hub, (int A, int B)), Diagram> known = [];

    /// <param name="table">Where the conditions live.</param>
    /// <param name="graph">Hubs included; its links go both ways.</param>
    /// <param name="named">Pairs to prepare for together; others may be asked for all the same.</param>
    public FanGraph(DiagramTable table, GuardedGraph graph, IEnumerable<(int A, int B)> named)
    {
        this.table = table;
        this.graph = graph;
        this.named = [.. named.Where(p => p.A != p.B).Select(InOrder).Distinct()];
        edges = [.. this.named.Union(GraphEdges())];
        for (var edge = 0; edge < edges.Length; edge++)
            edgeOf.Add(edges[edge], edge);
        blocks = new(graph.Nodes, edges);
    }

    /// <summary>The hub reaches both ends of the pair by separate ways.</summary>
    public Diagram Holds(int hub, (int A, int B) pair)
    {
        if (pair.A == pair.B)
            return Diagram.False;
        pair = InOrder(pair);
        if (!known.TryGetValue((hub, pair), out var holds))
        {
            holds = Find(hub, pair);
            known.Add((hub, pair), holds);
        }
        return holds;
    }

    private static (int A, int B) InOrder((int A, int B) pair) => pair.A < pair.B ? pair : (pair.B, pair.A);

    private Diagram Find(int hub, (int A, int B) pair)
    {
        if (!edgeOf.TryGetValue(pair, out var edge))
            return new FanGraph(table, graph, [pair]).Find(hub, pair);
        var at = (hub, blocks.OfEdge[edge]);
        if (!whole.TryGetValue(at, out var core))
            whole.Add(at, core = CoreOf(at));
        if (!core.Has(hub))
            return Diagram.False;
        if (edge < named.Length)
        {
            if (!reduced.TryGetValue(at, out var prepared))
                reduced.Add(at, prepared = core.Reduced(named.Where((_, i) => blocks.OfEdge[i] == at.Item2)));
            core = prepared;
        }
        return core.Reduced([pair]).Holds(pair);
    }

    private IEnumerable<(int A, int B)> GraphEdges() =>
        from node in Enumerable.Range(0, graph.Nodes)
        from link in graph.From(node)
        where node < link.Key
        select (node, link.Key);

    private FanCore CoreOf((int Hub, int Block) at)
    {
        var core = new FanCore(table, at.Hub);
        for (var edge = 0; edge < edges.Length; edge++)
            if (blocks.OfEdge[edge] == at.Block)
            {
                var (a, b) = edges[edge];
                core.Add(a, b, graph.Condition(a, b));
            }
        return core;
    }
}
