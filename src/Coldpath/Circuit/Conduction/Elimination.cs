using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// A guarded graph with its nodes eliminated one by one (the Boolean form of Gaussian elimination): taking out x
/// joins each pair of its neighbours under "the one to x and x to the other". What x conducted to its neighbours at
/// that time is kept, so that one substitution gives the condition under which any node is reached.
/// </summary>
internal sealed class Elimination
{
    private readonly DiagramTable table;
    private readonly int[] order;
    private readonly int[] place;
    private readonly Neighbour[][] rows;

    public Elimination(DiagramTable table, GuardedGraph graph)
    {
        this.table = table;
        var live = Enumerable.Range(0, graph.Nodes).Select(_ => new Dictionary<int, Diagram>()).ToArray();
        for (var from = 0; from < graph.Nodes; from++)
            foreach (var (to, condition) in graph.From(from))
            {
                live[from][to] = condition;
                live[to].TryAdd(from, Diagram.False);
            }
        order = new int[graph.Nodes];
        place = new int[graph.Nodes];
        rows = new Neighbour[graph.Nodes][];
        var queue = new DegreeQueue(live.Select(links => links.Count));
        for (var step = 0; step < order.Length; step++)
        {
            var node = queue.Take();
            order[step] = node;
            place[node] = step;
            rows[node] = Eliminate(live, node);
            foreach (var neighbour in rows[node])
                queue.Change(neighbour.Node, live[neighbour.Node].Count);
        }
    }

    /// <summary>
    /// The conditions under which nodes are reached from sources; worked out for the nodes that are asked for and
    /// those on the way.
    /// </summary>
    /// <param name="sources">Nodes with the condition under which each is a source.</param>
    public Spread Spread(params IEnumerable<KeyValuePair<int, Diagram>> sources)
    {
        var given = new Dictionary<int, Diagram>();
        var waiting = new SortedSet<int>();
        foreach (var (node, condition) in sources)
            Give(node, condition);
        while (waiting.Count > 0)
        {
            var node = order[waiting.Min];
            waiting.Remove(waiting.Min);
            foreach (var next in rows[node])
                Give(next.Node, table.And(given[node], next.Towards));
        }
        return new(this, given);

        void Give(int node, Diagram condition)
        {
            if (condition.IsFalse)
                return;
            given[node] = table.Or(given.GetValueOrDefault(node, Diagram.False), condition);
            waiting.Add(place[node]);
        }
    }

    /// <summary>The back substitution for one node, given those of the nodes eliminated after it.</summary>
    internal Diagram Reached(int node, Diagram given, Func<int, Diagram> later)
    {
        var reached = given;
        foreach (var neighbour in rows[node])
        {
            if (reached.IsTrue)
                break;
            if (!neighbour.Back.IsFalse)
                reached = table.Or(reached, table.And(later(neighbour.Node), neighbour.Back));
        }
        return reached;
    }

    private Neighbour[] Eliminate(Dictionary<int, Diagram>[] live, int node)
    {
        Neighbour[] row =
        [
            .. live[node].OrderBy(p => p.Key).Select(p => new Neighbour(p.Key, p.Value, live[p.Key][node])),
        ];
        foreach (var neighbour in row)
            live[neighbour.Node].Remove(node);
        for (var i = 0; i < row.Length; i++)
        for (var j = i + 1; j < row.Length; j++)
        {
            var (a, b) = (row[i], row[j]);
            var through = table.And(a.Back, b.Towards);
            var back = a.Back == a.Towards && b.Back == b.Towards ? through : table.And(b.Back, a.Towards);
            if (through.IsFalse && back.IsFalse)
                continue;
            live[a.Node][b.Node] = table.Or(live[a.Node].GetValueOrDefault(b.Node, Diagram.False), through);
            live[b.Node][a.Node] = table.Or(live[b.Node].GetValueOrDefault(a.Node, Diagram.False), back);
        }
        live[node].Clear();
        return row;
    }

    /// <param name="Node">One that is eliminated later.</param>
    /// <param name="Towards">From the eliminated node to it.</param>
    /// <param name="Back">From it to the eliminated node.</param>
    private readonly record struct Neighbour(int Node, Diagram Towards, Diagram Back);
}
