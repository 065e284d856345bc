namespace Coldpath.Circuit.Conduction;

/// <summary>
/// The blocks (biconnected components) of an undirected graph with parallel edges: two edges are in one block when
/// some simple cycle passes both. An edge from a node to itself is a block of its own.
/// </summary>
internal sealed class Blocks
{
    private readonly (int A, int B)[] edges;
    private readonly List<int>[] incident;
    private readonly int[] entered;
    private readonly int[] lowest;
    private readonly Stack<int> open = new();
    private int clock;

    public Blocks(int nodes, IEnumerable<(int A, int B)> edges)
    {
        this.edges = [.. edges];
        incident = [.. Enumerable.Range(0, nodes).Select(_ => new List<int>())];
        OfEdge = new int[this.edges.Length];
        Array.Fill(OfEdge, -1);
        for (var edge = 0; edge < this.edges.Length; edge++)
        {
            var (a, b) = this.edges[edge];
            if (a == b)
            {
                OfEdge[edge] = Count++;
                continue;
            }
            incident[a].Add(edge);
            incident[b].Add(edge);
        }
        entered = new int[nodes];
        lowest = new int[nodes];
        for (var node = 0; node < nodes; node++)
            if (entered[node] == 0)
                Search(node, -1);
    }

    public int Count { get; private set; }

    /// <summary>The number of the block that each edge belongs to.</summary>
    public int[] OfEdge { get; }

    private void Search(int node, int by)
    {
        entered[node] = lowest[node] = ++clock;
        foreach (var edge in incident[node])
        {
            var next = edges[edge].A == node ? edges[edge].B : edges[edge].A;
            if (edge == by || entered[next] > entered[node])
                continue;
            open.Push(edge);
            if (entered[next] != 0)
            {
                lowest[node] = Math.Min(lowest[node], entered[next]);
                continue;
            }
            Search(next, edge);
            lowest[node] = Math.Min(lowest[node], lowest[next]);
            if (lowest[next] >= entered[node])
                Close(edge);
        }
    }

    private void Close(int until)
    {
        int edge;
        do
        {
            edge = open.Pop();
            OfEdge[edge] = Count;
        } while (edge != until);
        Count++;
    }
}
