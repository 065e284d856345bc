using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>What earth holds at its own potential.</summary>
internal sealed class Earthing
{
    private readonly Mesh mesh;
    private readonly Sources sources;
    private readonly Spread tied;
    private readonly Spread bonded;
    private readonly Diagram[] unearthed;
    private readonly Lazy<Spread?> contested;

    public Earthing(Mesh mesh, Sources sources)
    {
        this.mesh = mesh;
        this.sources = sources;
        tied = mesh.Conductors.Spread(KeyValuePair.Create(mesh.Earth, Diagram.True));
        bonded = mesh.Sound.Spread(KeyValuePair.Create(mesh.Earth, Diagram.True));
        unearthed = [.. sources.All.Select(UnearthedOf)];
        contested = new(Contest);
    }

    private DiagramTable Table => mesh.Table;

    /// <summary>Joined to earth by closed conductors alone.</summary>
    public Diagram TiedHard(int net) => tied[net];

    /// <summary>Joined to earth through closed solid elements other than faults.</summary>
    public Diagram Bonded(int net) => bonded[net];

    /// <summary>The conductor is a source, and earth does not hold it.</summary>
    public Diagram Unearthed(Source source) => unearthed[source.Index];

    /// <summary>Tied hard; or bonded, and no unearthed conductor reaches the net without passing one tied hard.</summary>
    public Diagram EarthTied(int net)
    {
        var held = bonded[net];
        if (!held.IsFalse && contested.Value is { } reach)
            held = Table.Except(held, reach[net]);
        return Table.Or(tied[net], held);
    }

    /// <summary>Two bonded conductors of different voltage of one supply: only those tied hard stay earthed.</summary>
    private Diagram UnearthedOf(Source source)
    {
        var contradicted = Table.AnyOf(
            sources
                .BySupply[source.SupplyIndex]
                .Where(other => !other.SameVoltage(source))
                .Select(other => Table.And(other.On, bonded[other.Net]))
        );
        var earthed = Table.And(bonded[source.Net], Table.Or(tied[source.Net], !contradicted));
        return Table.Except(source.On, earthed);
    }

    /// <summary>
    /// The reach of unearthed conductors among nets that are bonded but not tied hard; null when there is no such
    /// conductor, as is usual.
    /// </summary>
    private Spread? Contest()
    {
        var fighting = sources
            .All.Select(s => KeyValuePair.Create(s.Net, Table.And(unearthed[s.Index], bonded[s.Net])))
            .Where(p => !p.Value.IsFalse)
            .ToArray();
        if (fighting.Length == 0)
            return null;
        var graph = new GuardedGraph(Table, mesh.NetCount);
        foreach (var link in mesh.Links.Where(l => l.IsSolid && l.Type != Wiring.ElementType.Fault))
            graph.Join(link.A, link.B, Table.AllOf(link.Closed, !tied[link.A], !tied[link.B]));
        return new Elimination(Table, graph).Spread(fighting);
    }
}
