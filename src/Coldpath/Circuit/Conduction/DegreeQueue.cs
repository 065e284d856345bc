namespace Coldpath.Circuit.Conduction;

/// <summary>Nodes by their number of neighbours, fewest first, then by number.</summary>
internal sealed class DegreeQueue
{
    private readonly int[] degrees;
    private readonly SortedSet<(int Degree, int Node)> waiting = [];

    public DegreeQueue(IEnumerable<int> degrees)
    {
        this.degrees = [.. degrees];
        for (var node = 0; node < this.degrees.Length; node++)
            waiting.Add((this.degrees[node], node));
    }

    public int Take()
    {
        var first = waiting.Min;
        waiting.Remove(first);
        return first.Node;
    }

    public void Change(int node, int degree)
    {
        if (degrees[node] == degree || !waiting.Remove((degrees[node], node)))
            return;
        degrees[node] = degree;
        waiting.Add((degree, node));
    }
}
