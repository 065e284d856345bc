namespace Coldpath.Circuit.Phasors;

/// <summary>Nodes in parts that are joined step by step; each part is named by its earth or its lowest node.</summary>
internal sealed class Partition(int nodes, int earth)
{
    private readonly int[] above = [.. Enumerable.Range(0, nodes)];

    /// <summary>The node that stands for the part.</summary>
    public int Reference(int node)
    {
        while (above[node] != node)
            node = above[node] = above[above[node]];
        return node;
    }

    /// <summary>False when they were joined already.</summary>
    public bool Join(int a, int b)
    {
        (a, b) = (Reference(a), Reference(b));
        if (a == b)
            return false;
        if (b == earth || a != earth && b < a)
            (a, b) = (b, a);
        above[b] = a;
        return true;
    }
}
