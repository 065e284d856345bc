using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>One step of a path: along an element, or across a coupling.</summary>
internal sealed record Hop(int From, int To, string By);

/// <summary>What leads on from each net in one state, in declared order.</summary>
internal sealed class Hops
{
    private readonly Mesh mesh;
    private readonly State state;
    private readonly ILookup<int, Hop> solid;
    private readonly ILookup<int, Hop> series;
    private readonly ILookup<int, Hop> anodes;
    private readonly ILookup<int, Hop> cathodes;
    private readonly ILookup<int, Hop> touching;
    private readonly ILookup<int, Hop> couplings;

    public Hops(Mesh mesh, State state)
    {
        this.mesh = mesh;
        this.state = state;
        var closed = mesh.Links.Where(l => mesh.States.Holds(l.Closed, state)).ToArray();
        var diodes = closed.Where(l => l.Type == ElementType.Diode).Select(Forward).ToArray();
        solid = BothWays(closed.Where(l => l.IsSolid));
        series = BothWays(closed.Where(l => l.Type == ElementType.Series));
        anodes = diodes.ToLookup(h => h.From);
        cathodes = diodes.Select(Turned).ToLookup(h => h.From);
        touching = BothWays(mesh.Links.Where(l => closed.Contains(l) || mesh.States.Holds(l.Leaks, state)));
        couplings = mesh.Couplings().SelectMany(Across).ToLookup(h => h.From);
    }

    /// <summary>Within a solid component.</summary>
    public IEnumerable<Hop> Solid(int net) => solid[net];

    /// <summary>Within a solid component, and through diodes in a conductor's own direction.</summary>
    public IEnumerable<Hop> Solid(int net, Polarity polarity) =>
        solid[net]
            .Concat(polarity == Polarity.Minus ? [] : anodes[net])
            .Concat(polarity == Polarity.Plus ? [] : cathodes[net]);

    /// <summary>By load reach, through diodes in a conductor's own direction.</summary>
    public IEnumerable<Hop> Load(int net, Polarity polarity) => Solid(net, polarity).Concat(series[net]);

    /// <summary>Through whatever conducts or leaks.</summary>
    public IEnumerable<Hop> Touching(int net) => touching[net];

    /// <summary>Across couplings, from a terminal to each that it drives.</summary>
    public IEnumerable<Hop> Coupled(int net) => couplings[net];

    private IEnumerable<Hop> Across(Coupling coupling)
    {
        var drive = coupling.FirstDrives ? coupling.Windings.Take(1) : coupling.Windings;
        var driven = coupling.FirstDrives ? coupling.Windings.Skip(1) : coupling.Windings;
        return from a in drive.SelectMany(w => w).Distinct()
            from b in driven.SelectMany(w => w).Distinct()
            where a != b
            select new Hop(mesh.Net(a), mesh.Net(b), coupling.Name);
    }

    private static ILookup<int, Hop> BothWays(IEnumerable<Link> links) =>
        links.Select(Forward).SelectMany(h => new[] { h, Turned(h) }).ToLookup(h => h.From);

    private static Hop Forward(Link link) => new(link.A, link.B, link.Element.Id);

    private static Hop Turned(Hop hop) => new(hop.To, hop.From, hop.By);
}
