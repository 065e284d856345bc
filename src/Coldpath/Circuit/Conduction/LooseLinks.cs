using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Everything that lets a touch voltage through: all closed elements, leaks, and each coupling as one virtual net
/// joined to every terminal of its windings. Virtual nets are numbered after the nets.
/// </summary>
internal sealed class LooseLinks
{
    private readonly Mesh mesh;
    private readonly Lazy<Elimination> unheld;

    /// <param name="mesh">The links.</param>
    /// <param name="earthTied">For each net; nothing spreads on through a net that earth holds.</param>
    /// <param name="withCouplings">False to leave couplings out.</param>
    public LooseLinks(Mesh mesh, IReadOnlyList<Diagram> earthTied, bool withCouplings)
    {
        this.mesh = mesh;
        Coupling[] couplings = withCouplings ? [.. mesh.Couplings()] : [];
        Graph = new(mesh.Table, mesh.NetCount + couplings.Length);
        foreach (var link in mesh.Links)
        {
            Graph.Join(link.A, link.B, link.Closed);
            Graph.Join(link.A, link.B, link.Leaks);
        }
        for (var i = 0; i < couplings.Length; i++)
            AddCoupling(couplings[i], mesh.NetCount + i);
        unheld = new(() => new(mesh.Table, Unheld(earthTied)));
    }

    /// <summary>All links, whatever earth holds.</summary>
    public GuardedGraph Graph { get; }

    /// <summary>The links neither end of which earth holds, eliminated.</summary>
    public Elimination Eliminated => unheld.Value;

    private void AddCoupling(Coupling coupling, int hub)
    {
        for (var i = 0; i < coupling.Windings.Count; i++)
            foreach (var net in coupling.Windings[i].Select(mesh.Net))
            {
                if (!coupling.FirstDrives || i == 0)
                    Graph.Direct(net, hub, Diagram.True);
                if (!coupling.FirstDrives || i > 0)
                    Graph.Direct(hub, net, Diagram.True);
            }
    }

    private GuardedGraph Unheld(IReadOnlyList<Diagram> earthTied)
    {
        var graph = new GuardedGraph(mesh.Table, Graph.Nodes);
        for (var from = 0; from < Graph.Nodes; from++)
            foreach (var (to, condition) in Graph.From(from))
                graph.Direct(from, to, mesh.Table.AllOf(condition, !Held(from), !Held(to)));
        return graph;

        Diagram Held(int node) => node < earthTied.Count ? earthTied[node] : Diagram.False;
    }
}
