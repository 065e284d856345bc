using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>A conducting path: nets from its beginning to its end, and the element or coupling between each two.</summary>
/// <param name="Supply">The supply whose conductor it begins at.</param>
/// <param name="Conductor">That conductor.</param>
/// <param name="Nets">One more than <paramref name="Steps"/>.</param>
/// <param name="Steps">Element ids, or the name of a coupling.</param>
public sealed record ConductingPath(
    string Supply,
    string Conductor,
    IReadOnlyList<string> Nets,
    IReadOnlyList<string> Steps
);

/// <summary>Shortest conducting paths in one state, the first declared among equals.</summary>
public sealed class Trace
{
    private readonly Network network;
    private readonly State state;
    private readonly ILookup<string, Hop> solid;
    private readonly ILookup<string, Hop> loose;

    public Trace(Network network, State state)
    {
        this.network = network;
        this.state = state;
        var mesh = network.Mesh;
        var conducting = mesh.Links.Where(l => Holds(l.Closed)).ToArray();
        solid = conducting
            .Where(l => l.IsSolid || l.Type == ElementType.Series)
            .SelectMany(BothWays)
            .Concat(
                conducting
                    .Where(l => l.Type == ElementType.Diode)
                    .Select(l => HopOf(l, l.Element.A, l.Element.B))
            )
            .ToLookup(h => h.From);
        loose = conducting
            .Where(l => l.Type is ElementType.Load or ElementType.Diode)
            .Concat(mesh.Links.Where(l => Holds(l.Leaks)))
            .SelectMany(BothWays)
            .Concat(mesh.Couplings().SelectMany(HopsOf))
            .ToLookup(h => h.From);
    }

    /// <summary>How an unearthed conductor comes to a live net, solidly if it can; null when the net is dead.</summary>
    public ConductingPath? Live(string net)
    {
        if (!Holds(network.Live(net)))
            return null;
        var begin = network.Sources.All.Where(s => Holds(network.Unearthed(s))).ToArray();
        return Search(begin, net, Solid) ?? Search(begin, net, Solid, Loose);
    }

    /// <summary>
    /// What makes a short of the supply: the path between two of its conductors of different voltage, or the paths that
    /// join it twice to another supply. Empty when it is not shorted.
    /// </summary>
    public IReadOnlyList<ConductingPath> Short(string supply)
    {
        var own = On(network.Sources.BySupply[network.Sources.IndexOf(supply)]);
        var within =
            from a in own
            from b in own
            where a.Index < b.Index && !a.SameVoltage(b)
            let path = Search([a], b.Conductor.Net, Metallic)
            where path is not null
            orderby path.Steps.Count
            select path;
        return within.FirstOrDefault() is { } inside ? [inside] : Between(own);
    }

    private IReadOnlyList<ConductingPath> Between(IReadOnlyList<Source> own)
    {
        var others = network.Sources.All.Where(s => own.All(o => o.SupplyIndex != s.SupplyIndex));
        var joins =
            from a in own
            from b in On([.. others])
            let path = Search([a], b.Conductor.Net, Metallic)
            where path is not null
            orderby path.Steps.Count
            select path;
        return [.. joins];
    }

    private Source[] On(IReadOnlyList<Source> sources) => [.. sources.Where(s => !s.IsStored && Holds(s.On))];

    private IEnumerable<Hop> Solid(string net) => solid[net];

    /// <summary>Solid links without series elements and diodes: what a short passes.</summary>
    private IEnumerable<Hop> Metallic(string net) => solid[net].Where(h => h.IsMetallic);

    /// <summary>Loose links neither end of which earth holds; a virtual net is held by nothing.</summary>
    private IEnumerable<Hop> Loose(string net) => IsHeld(net) ? [] : loose[net].Where(h => !IsHeld(h.To));

    private bool IsHeld(string net) =>
        !net.StartsWith(Hub, StringComparison.Ordinal) && Holds(network.EarthTied(net));

    private const string Hub = "\0";

    private static ConductingPath? Search(
        IEnumerable<Source> begin,
        string target,
        params ReadOnlySpan<Func<string, IEnumerable<Hop>>> links
    )
    {
        var cameBy = new Dictionary<string, Hop?>();
        var sourceOf = new Dictionary<string, Source>();
        var queue = new Queue<string>();
        foreach (var source in begin)
            if (cameBy.TryAdd(source.Conductor.Net, null))
            {
                sourceOf.Add(source.Conductor.Net, source);
                queue.Enqueue(source.Conductor.Net);
            }
        while (queue.TryDequeue(out var net) && net != target)
            foreach (var next in links)
            foreach (var hop in next(net))
                if (cameBy.TryAdd(hop.To, hop))
                    queue.Enqueue(hop.To);
        return cameBy.ContainsKey(target) ? PathTo(target, cameBy, sourceOf) : null;
    }

    private static ConductingPath PathTo(
        string target,
        Dictionary<string, Hop?> cameBy,
        Dictionary<string, Source> sourceOf
    )
    {
        var nets = new List<string> { target };
        var steps = new List<string>();
        while (cameBy[nets[^1]] is { } hop)
        {
            steps.Add(hop.By);
            nets.Add(hop.From);
        }
        nets.Reverse();
        steps.Reverse();
        var source = sourceOf[nets[0]];
        return new(
            source.Supply.Name,
            source.Conductor.Name,
            [.. nets.Where(n => !n.StartsWith(Hub, StringComparison.Ordinal))],
            [.. steps]
        );
    }

    private static IEnumerable<Hop> HopsOf(Coupling coupling)
    {
        var hub = Hub + coupling.Name;
        foreach (var (i, winding) in coupling.Windings.Index())
        foreach (var net in winding)
        {
            if (!coupling.FirstDrives || i == 0)
                yield return new(net, hub, coupling.Name, false);
            if (!coupling.FirstDrives || i > 0)
                yield return new(hub, net, coupling.Name, false);
        }
    }

    private static IEnumerable<Hop> BothWays(Link link) =>
        [HopOf(link, link.Element.A, link.Element.B), HopOf(link, link.Element.B, link.Element.A)];

    private static Hop HopOf(Link link, string from, string to) =>
        new(from, to, link.Element.Id, link.IsSolid);

    private bool Holds(Diagram condition) => network.States.Holds(condition, state);

    private sealed record Hop(string From, string To, string By, bool IsMetallic);
}
