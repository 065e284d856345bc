using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// The graph along which a touch voltage spreads: all closed elements, leaks, and each coupling as one virtual net
/// joined to every terminal of its windings; but no link one end of which earth holds. Virtual nets are numbered
/// after the nets.
/// </summary>
internal static class LooseLinks
{
    /// <param name="mesh">The links.</param>
    /// <param name="earthTied">For each net, when earth holds it.</param>
    /// <param name="withCouplings">False to leave couplings out.</param>
    public static GuardedGraph Graph(Mesh mesh, IReadOnlyList<Diagram> earthTied, bool withCouplings)
    {
        Coupling[] couplings = withCouplings ? [.. mesh.Couplings()] : [];
        var graph = new GuardedGraph(mesh.Table, mesh.NetCount + couplings.Length);
        foreach (var link in mesh.Links)
        {
            var passes = mesh.Table.Or(link.Closed, link.Leaks);
            graph.Join(link.A, link.B, mesh.Table.AllOf(passes, !earthTied[link.A], !earthTied[link.B]));
        }
        for (var i = 0; i < couplings.Length; i++)
            Add(graph, couplings[i], mesh.NetCount + i);
        return graph;

        void Add(GuardedGraph graph, Coupling coupling, int hub)
        {
            for (var i = 0; i < coupling.Windings.Count; i++)
                foreach (var net in coupling.Windings[i].Select(mesh.Net))
                {
                    if (!coupling.FirstDrives || i == 0)
                        graph.Direct(net, hub, !earthTied[net]);
                    if (!coupling.FirstDrives || i > 0)
                        graph.Direct(hub, net, !earthTied[net]);
                }
        }
    }
}
