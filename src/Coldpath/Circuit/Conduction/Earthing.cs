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
    private readonly Lazy<Contest?> contested;

    public Earthing(Mesh mesh, Sources sources)
    {
        this.mesh = mesh;
        this.sources = sources;
        tied = mesh.Conductors.Spread(KeyValuePair.Create(mesh.Earth, Diagram.True));
        bonded = mesh.Sound.Spread(KeyValuePair.Create(mesh.Earth, Diagram.True));
        unearthed = [.. sources.All.Select(UnearthedOf)];
        contested = new(FindContest);
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
    /// The reach of unearthed conductors along nets that are not tied hard; null when none can come to a bonded net,
    /// as is usual. Diodes are passed in each conductor's own direction, as live does.
    /// </summary>
    private Contest? FindContest()
    {
        var fighting = sources
            .All.Where(s => mesh.HasDiodes || Table.Meet(unearthed[s.Index], bonded[s.Net]))
            .Where(s => !unearthed[s.Index].IsFalse)
            .ToArray();
        return fighting.Length == 0 ? null : new(mesh, fighting, unearthed, net => !tied[net]);
    }
}
