using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// One block of a graph around one hub. A node with three neighbours or fewer that is neither an end of an asked pair
/// nor (with three) next to the hub is eliminated: no two separate ways can both use it, and one that uses it twice
/// has a shorter one that does so once. With four neighbours that is no longer so; what is left of those is taken
/// out one by one.
/// </summary>
internal sealed class FanCore(DiagramTable table, int hub)
{
    private const int MostNeighbours = 3;

    private readonly Dictionary<int, Dictionary<int, Diagram>> links = [];

    public bool Has(int node) => links.ContainsKey(node);

    /// <summary>Adds a link both ways.</summary>
    public void Add(int a, int b, Diagram condition)
    {
        if (!condition.IsFalse)
            Row(a)[b] = Row(b)[a] = table.Or(Row(a).GetValueOrDefault(b, Diagram.False), condition);
    }

    /// <summary>A copy without the nodes that can go when only these pairs are asked for.</summary>
    public FanCore Reduced(IEnumerable<(int A, int B)> pairs)
    {
        var copy = Copy();
        copy.Reduce([.. pairs.SelectMany(p => new[] { p.A, p.B })]);
        return copy;
    }

    /// <summary>The hub reaches the two ends by separate ways: in spite of each cut it still reaches one.</summary>
    public Diagram Holds((int A, int B) pair)
    {
        if (!Has(pair.A) || !Has(pair.B))
            return Diagram.False;
        int[] others = [.. links.Keys.Where(node => node != hub && node != pair.A && node != pair.B).Order()];
        // Where a node with two neighbours cuts the pair off, so does its neighbour on the pair's side.
        int[] cuts = [.. others.Where(node => links[node].Count > 2)];
        var between = Without(others);
        var holds = table.And(between.FromHub(pair.A), between.FromHub(pair.B));
        return Without(others.Except(cuts)).Merged(pair).InSpiteOf(cuts, pair.A, holds);
    }

    /// <summary>
    /// The condition, and that in spite of each of these cuts the hub reaches the end. The cuts of either half have
    /// the elimination of the other half in common, and none of them matters where that leaves a link to the end.
    /// </summary>
    private Diagram InSpiteOf(int[] cuts, int end, Diagram holds)
    {
        if (cuts.Length == 0 || table.Entails(holds, FromHub(end)))
            return holds;
        if (cuts.Length == 1)
            return table.And(holds, FromHub(end));
        var (first, second) = (cuts[..(cuts.Length / 2)], cuts[(cuts.Length / 2)..]);
        holds = Without(second).InSpiteOf(first, end, holds);
        return Without(first).InSpiteOf(second, end, holds);
    }

    private Diagram FromHub(int node) => Row(hub).GetValueOrDefault(node, Diagram.False);

    /// <summary>A copy with the nodes eliminated, by fewest neighbours.</summary>
    private FanCore Without(IEnumerable<int> nodes)
    {
        var rest = Copy();
        var left = nodes.ToList();
        while (left.Count > 0)
        {
            var next = left.MinBy(node => (rest.links[node].Count, node));
            rest.Eliminate(next);
            left.Remove(next);
        }
        return rest;
    }

    /// <summary>A copy in which the second of the pair is one node with the first.</summary>
    private FanCore Merged((int A, int B) pair)
    {
        var merged = Copy();
        merged.links.Remove(pair.B, out var row);
        foreach (var (node, condition) in row!)
        {
            merged.links[node].Remove(pair.B);
            if (node != pair.A)
                merged.Add(pair.A, node, condition);
        }
        return merged;
    }

    private FanCore Copy()
    {
        var copy = new FanCore(table, hub);
        foreach (var (node, row) in links)
            copy.links.Add(node, new(row));
        return copy;
    }

    private Dictionary<int, Diagram> Row(int node)
    {
        if (!links.TryGetValue(node, out var row))
            links.Add(node, row = []);
        return row;
    }

    private void Reduce(HashSet<int> ends)
    {
        var queue = new PriorityQueue<int, (int Degree, int Node)>();
        foreach (var node in links.Keys)
            Offer(node);
        while (queue.TryDequeue(out var node, out _))
            if (CanGo(node))
                foreach (var neighbour in Eliminate(node))
                    Offer(neighbour);

        void Offer(int node)
        {
            if (CanGo(node))
                queue.Enqueue(node, (links[node].Count, node));
        }

        bool CanGo(int node) =>
            node != hub
            && !ends.Contains(node)
            && links.TryGetValue(node, out var row)
            && (row.Count < MostNeighbours || row.Count == MostNeighbours && !row.ContainsKey(hub));
    }

    private int[] Eliminate(int node)
    {
        links.Remove(node, out var row);
        int[] neighbours = [.. row!.Keys];
        foreach (var neighbour in neighbours)
            links[neighbour].Remove(node);
        for (var i = 0; i < neighbours.Length; i++)
        for (var j = i + 1; j < neighbours.Length; j++)
            Add(neighbours[i], neighbours[j], table.And(row[neighbours[i]], row[neighbours[j]]));
        return neighbours;
    }
}
