using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Asks of a guarded graph whether a hub is joined to the two ends of a pair by ways that share no node but the hub:
/// by Menger's theorem, whether whatever other node is taken out, the hub still reaches one of the ends.
/// </summary>
/// <remarks>
/// Before nodes are taken out one by one the graph is made small without changing the answer. Only the block that
/// holds the hub and the pair counts, since both lie on one simple cycle. A node with three neighbours or fewer that
/// is neither an end nor next to the hub is eliminated: no two separate ways can both use it, and one that uses it
/// twice has a shorter one that does so once. With four neighbours that is no longer so.
/// </remarks>
internal sealed class FanGraph
{
    private const int MostNeighbours = 3;

    private readonly DiagramTable table;
    private readonly GuardedGraph graph;
    private readonly (int A, int B)[] pairs;
    private readonly (int A, int B)[] edges;
    private readonly Blocks blocks;
    private readonly Dictionary<(int Hub, int Block), FanCore> cores = [];
    private readonly Dictionary<(int Hub, (int A, int B)), Diagram> known = [];

    /// <param name="table">Where the conditions live.</param>
    /// <param name="graph">Hubs included; its links go both ways.</param>
    /// <param name="pairs">Pairs to prepare for together; others may be asked for all the same.</param>
    public FanGraph(DiagramTable table, GuardedGraph graph, IEnumerable<(int A, int B)> pairs)
    {
        this.table = table;
        this.graph = graph;
        this.pairs = [.. pairs.Where(p => p.A != p.B).Distinct()];
        edges = [.. this.pairs.Concat(GraphEdges())];
        blocks = new(graph.Nodes, edges);
    }

    /// <summary>The hub reaches both ends of the pair by separate ways.</summary>
    public Diagram Holds(int hub, (int A, int B) pair)
    {
        if (pair.A == pair.B)
            return Diagram.False;
        if (!known.TryGetValue((hub, pair), out var holds))
        {
            holds = Find(hub, pair);
            known.Add((hub, pair), holds);
        }
        return holds;
    }

    private Diagram Find(int hub, (int A, int B) pair)
    {
        var index = Array.IndexOf(pairs, pair);
        if (index < 0)
            return new FanGraph(table, graph, [pair]).Find(hub, pair);
        var block = blocks.OfEdge[index];
        if (!cores.TryGetValue((hub, block), out var core))
        {
            core = CoreOf(hub, block);
            cores.Add((hub, block), core);
        }
        return core.Has(hub) ? core.Reduced([pair], MostNeighbours).Holds(pair) : Diagram.False;
    }

    private IEnumerable<(int A, int B)> GraphEdges() =>
        from node in Enumerable.Range(0, graph.Nodes)
        from link in graph.From(node)
        where node < link.Key
        select (node, link.Key);

    private FanCore CoreOf(int hub, int block)
    {
        var core = new FanCore(table, hub);
        for (var edge = pairs.Length; edge < edges.Length; edge++)
            if (blocks.OfEdge[edge] == block)
            {
                var (a, b) = edges[edge];
                core.Add(a, b, graph.Condition(a, b));
            }
        return core.Reduced(pairs.Where((_, i) => blocks.OfEdge[i] == block), MostNeighbours);
    }
}
