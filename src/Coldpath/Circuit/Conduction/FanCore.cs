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
        var copy = new FanCore(table, hub);
        foreach (var (node, row) in links)
            copy.links.Add(node, new(row));
        copy.Reduce([.. pairs.SelectMany(p => new[] { p.A, p.B })]);
        return copy;
    }

    /// <summary>The hub reaches the two ends by separate ways: in spite of each cut it still reaches one.</summary>
    public Diagram Holds((int A, int B) pair)
    {
        var holds = Has(pair.A) && Has(pair.B) ? Diagram.True : Diagram.False;
        foreach (var cut in Cuts(pair))
        {
            if (holds.IsFalse)
                break;
            holds = table.And(holds, ReachesWithout(cut, pair));
        }
        return holds;
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

    /// <summary>
    /// The ends, and every other node but those with two neighbours: where such a one cuts the pair off, so does its
    /// neighbour on the pair's side.
    /// </summary>
    private IEnumerable<int> Cuts((int A, int B) pair) =>
        links
            .Where(p => p.Key != hub && (p.Value.Count > 2 || IsEnd(p.Key, pair)))
            .Select(p => p.Key)
            .OrderBy(node => IsEnd(node, pair) ? 0 : 1)
            .ThenBy(node => node);

    private static bool IsEnd(int node, (int A, int B) pair) => node == pair.A || node == pair.B;

    /// <summary>Eliminates all but the hub and the ends that are left, by fewest neighbours.</summary>
    private Diagram ReachesWithout(int cut, (int A, int B) pair)
    {
        var rest = new FanCore(table, hub);
        foreach (var (node, row) in links)
            if (node != cut)
            {
                var copy = new Dictionary<int, Diagram>(row);
                copy.Remove(cut);
                rest.links.Add(node, copy);
            }
        var queue = new PriorityQueue<int, (int Degree, int Node)>();
        foreach (var (node, row) in rest.links)
            if (node != hub && !IsEnd(node, pair))
                queue.Enqueue(node, (row.Count, node));
        while (queue.TryDequeue(out var node, out var offered))
        {
            if (!rest.links.TryGetValue(node, out var row))
                continue;
            if (row.Count != offered.Degree)
                queue.Enqueue(node, (row.Count, node));
            else
                rest.Eliminate(node);
        }
        var fromHub = rest.Row(hub);
        return table.Or(
            fromHub.GetValueOrDefault(pair.A, Diagram.False),
            fromHub.GetValueOrDefault(pair.B, Diagram.False)
        );
    }
}
