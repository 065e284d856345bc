using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// What lies between two nodes of an undirected guarded graph: nodes that are always joined are one, so are nodes from
/// which the same ways go on, and links that no way without a detour passes are left out.
/// </summary>
internal sealed class SweptGraph
{
    /// <param name="table">Where the conditions live.</param>
    /// <param name="nodes">How many there are.</param>
    /// <param name="links">None false.</param>
    /// <param name="from">The one node.</param>
    /// <param name="to">The other.</param>
    public SweptGraph(
        DiagramTable table,
        int nodes,
        IReadOnlyCollection<(int A, int B, Diagram Condition)> links,
        int from,
        int to
    )
    {
        (Nodes, From, To) = (nodes, from, to);
        var merged = Contracted(table, [.. links]);
        var classes = AlikeNodes.Classes(table, nodes, merged, To);
        (From, To) = (classes[From], classes[To]);
        merged = Contracted(table, Merged(table, merged, node => classes[node]));
        var between = Between(merged);
        Levels = [.. between.SelectMany(l => table.Support(l.Condition)).Distinct().Order()];
        var numbers = Levels.Index().ToDictionary(p => p.Item, p => p.Index);
        Links = [.. between.Select(Link)];

        SweptLink Link((int A, int B, Diagram Condition) link)
        {
            var support = table.Support(link.Condition);
            return new(link.A, link.B, link.Condition, numbers[support[0]], numbers[support[^1]]);
        }
    }

    public int Nodes { get; }
    public int From { get; private set; }
    public int To { get; private set; }
    public IReadOnlyList<SweptLink> Links { get; }

    /// <summary>All levels that a link depends on, rising.</summary>
    public IReadOnlyList<int> Levels { get; }

    /// <summary>With nodes that are always joined made one, also where that leaves parallel links of which one is always there.</summary>
    private List<(int A, int B, Diagram Condition)> Contracted(
        DiagramTable table,
        List<(int A, int B, Diagram Condition)> links
    )
    {
        while (links.Exists(l => l.Condition.IsTrue))
        {
            var joined = new Islands(Nodes, links.Where(l => l.Condition.IsTrue).Select(l => (l.A, l.B)));
            (From, To) = (joined.Of(From), joined.Of(To));
            links = Merged(table, links, joined.Of);
        }
        return links;
    }

    /// <summary>The links between nodes of other names; parallel ones are one.</summary>
    private static List<(int A, int B, Diagram Condition)> Merged(
        DiagramTable table,
        IEnumerable<(int A, int B, Diagram Condition)> links,
        Func<int, int> name
    ) =>
        [
            .. links
                .Select(l => (A: name(l.A), B: name(l.B), l.Condition))
                .Where(l => l.A != l.B)
                .GroupBy(l => (Math.Min(l.A, l.B), Math.Max(l.A, l.B)), l => l.Condition)
                .Select(same => (same.Key.Item1, same.Key.Item2, table.AnyOf(same))),
        ];

    /// <summary>A link is part of a simple way exactly when it is in one block with a link that closes the way.</summary>
    private List<(int A, int B, Diagram Condition)> Between(List<(int A, int B, Diagram Condition)> links)
    {
        if (From == To)
            return [];
        var blocks = new Blocks(Nodes, [.. links.Select(l => (l.A, l.B)), (From, To)]).OfEdge;
        return [.. links.Where((_, i) => blocks[i] == blocks[^1])];
    }
}
