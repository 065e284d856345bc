using QuikGraph.Collections;

namespace Coldpath.Circuit.Conduction;

/// <summary>Which nodes hang together.</summary>
internal sealed class Islands
{
    private readonly ForestDisjointSet<int> nodes = new();

    /// <param name="count">Of nodes, numbered from 0.</param>
    /// <param name="links">Their ends.</param>
    public Islands(int count, IEnumerable<(int A, int B)> links)
    {
        for (var node = 0; node < count; node++)
            nodes.MakeSet(node);
        foreach (var (a, b) in links)
            nodes.Union(a, b);
    }

    /// <summary>One node of those that hang together with this one, the same for all of them.</summary>
    public int Of(int node) => nodes.FindSet(node);
}
