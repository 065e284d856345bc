using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>Where unearthed conductors contest earth's hold: solidly, faults left out, past no net tied hard.</summary>
internal sealed class Contest
{
    private readonly DiagramTable table;
    private readonly Spread[] spreads;

    /// <param name="mesh">The links.</param>
    /// <param name="fighting">The conductors that may come to a bonded net.</param>
    /// <param name="unearthed">For each source, when it is unearthed.</param>
    /// <param name="free">For each net, when it is not tied hard.</param>
    public Contest(
        Mesh mesh,
        IReadOnlyList<Source> fighting,
        IReadOnlyList<Diagram> unearthed,
        Func<int, Diagram> free
    )
    {
        table = mesh.Table;
        spreads =
        [
            .. fighting
                .GroupBy(s => mesh.HasDiodes ? s.Conductor.Polarity : Polarity.Alternating)
                .Select(same =>
                    new Elimination(table, Graph(mesh, same.Key, free)).Spread(
                        same.Select(s =>
                            KeyValuePair.Create(s.Net, table.And(unearthed[s.Index], free(s.Net)))
                        )
                    )
                ),
        ];
    }

    public Diagram this[int net] => table.AnyOf(spreads.Select(s => s[net]));

    private static GuardedGraph Graph(Mesh mesh, Polarity polarity, Func<int, Diagram> free)
    {
        var graph = new GuardedGraph(mesh.Table, mesh.NetCount);
        foreach (var link in mesh.Links)
        {
            if (link.Type == ElementType.Fault || !link.IsSolid && link.Type != ElementType.Diode)
                continue;
            var passes = mesh.Table.AllOf(link.Closed, free(link.A), free(link.B));
            if (link.IsSolid)
                graph.Join(link.A, link.B, passes);
            else
                Mesh.AddDiode(graph, link, polarity, passes);
        }
        return graph;
    }
}
