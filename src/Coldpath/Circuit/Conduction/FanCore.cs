using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>A part of a graph around one hub, made smaller step by step; see <see cref="FanGraph"/>.</summary>
internal sealed class FanCore(DiagramTable table, int hub)
{
    private readonly SortedDictionary<int, SortedDictionary<int, Diagram>> links = [];

    public bool Has(int node) => links.ContainsKey(node);

    public void Add(int a, int b, Diagram condition) =>
        Row(a)[b] = Row(b)[a] = table.Or(Row(a).GetValueOrDefault(b, Diagram.False), condition);

    /// <summary>A copy without the nodes that can go when only these pairs are asked for.</summary>
    public FanCore Reduced(IEnumerable<(int A, int B)> pairs, int mostNeighbours)
    {
        var copy = new FanCore(table, hub);
        foreach (var (node, row) in links)
        foreach (var (next, condition) in row)
            copy.Row(node)[next] = condition;
        copy.Reduce([.. pairs.SelectMany(p => new[] { p.A, p.B })], mostNeighbours);
        return copy;
    }

    /// <summary>The hub reaches the two ends by separate ways.</summary>
    public Diagram Holds((int A, int B) pair)
    {
        var holds = Diagram.True;
        foreach (var node in Cuts(pair))
        {
            if (holds.IsFalse)
                break;
            holds = table.And(holds, ReachesWithout(node, pair));
        }
        return holds;
    }

    private SortedDictionary<int, Diagram> Row(int node)
    {
        if (!links.TryGetValue(node, out var row))
            links.Add(node, row = []);
        return row;
    }

    private void Reduce(HashSet<int> ends, int mostNeighbours)
    {
        while (FirstToGo() is { } node)
            Eliminate(node);

        int? FirstToGo()
        {
            int? first = null;
            foreach (var (node, row) in links)
                if (
                    node != hub
                    && row.Count <= mostNeighbours
                    && !ends.Contains(node)
                    && (row.Count <= 2 || !row.ContainsKey(hub))
                    && (first is null || row.Count < links[first.Value].Count)
                )
                    first = node;
            return first;
        }
    }

    private void Eliminate(int node)
    {
        var row = links[node].Keys.ToArray();
        for (var i = 0; i < row.Length; i++)
        for (var j = i + 1; j < row.Length; j++)
        {
            var through = table.And(links[row[i]][node], links[node][row[j]]);
            if (!through.IsFalse)
                Add(row[i], row[j], through);
        }
        foreach (var neighbour in row)
            links[neighbour].Remove(node);
        links.Remove(node);
    }

    /// <summary>
    /// The ends, and every other node but those with two neighbours: where such a one cuts the pair off, so does its
    /// neighbour on the pair's side.
    /// </summary>
    private IEnumerable<int> Cuts((int A, int B) pair) =>
        links
            .Where(p => p.Key != hub && (p.Value.Count > 2 || p.Key == pair.A || p.Key == pair.B))
            .Select(p => p.Key)
            .OrderBy(node => node == pair.A || node == pair.B ? 0 : 1)
            .ThenBy(node => node);

    private Diagram ReachesWithout(int cut, (int A, int B) pair)
    {
        var numbers = links.Keys.Where(node => node != cut).Index().ToDictionary(p => p.Item, p => p.Index);
        var rest = new GuardedGraph(table, numbers.Count);
        foreach (var (node, row) in links)
        foreach (var (next, condition) in row)
            if (node < next && node != cut && next != cut)
                rest.Join(numbers[node], numbers[next], condition);
        var reached = new Elimination(table, rest).Spread(KeyValuePair.Create(numbers[hub], Diagram.True));
        return table.Or(At(pair.A), At(pair.B));

        Diagram At(int end) => numbers.TryGetValue(end, out var number) ? reached[number] : Diagram.False;
    }
}
