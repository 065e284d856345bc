using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// A graph whose links exist under conditions. Nodes are numbered; a link has a direction, and parallel links are
/// one link under either's condition.
/// </summary>
internal sealed class GuardedGraph
{
    private readonly DiagramTable table;
    private readonly SortedDictionary<int, Diagram>[] links;

    public GuardedGraph(DiagramTable table, int nodes)
    {
        this.table = table;
        links = new SortedDictionary<int, Diagram>[nodes];
        for (var i = 0; i < nodes; i++)
            links[i] = [];
    }

    public int Nodes => links.Length;

    /// <summary>The nodes that the node has a link to, rising, with the links' conditions.</summary>
    public IEnumerable<KeyValuePair<int, Diagram>> From(int node) => links[node];

    public Diagram Condition(int from, int to) => links[from].GetValueOrDefault(to, Diagram.False);

    /// <summary>Adds a link from the one to the other.</summary>
    public void Direct(int from, int to, Diagram condition)
    {
        if (from == to || condition.IsFalse)
            return;
        links[from][to] = table.Or(Condition(from, to), condition);
    }

    /// <summary>Adds links both ways.</summary>
    public void Join(int a, int b, Diagram condition)
    {
        Direct(a, b, condition);
        Direct(b, a, condition);
    }
}
