using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>Shortest conducting paths in one state, the first declared among equals.</summary>
public sealed class Trace
{
    private readonly Network network;
    private readonly State state;
    private readonly Hops hops;
    private readonly Dictionary<int, bool> held = [];

    public Trace(Network network, State state)
    {
        this.network = network;
        this.state = state;
        hops = new(network.Mesh, state);
    }

    /// <summary>
    /// How an unearthed conductor comes to a live net, in the way that the net is said to be live by; null when the
    /// net is dead.
    /// </summary>
    public ConductingPath? Live(string net)
    {
        foreach (var by in Enum.GetValues<LiveBy>())
            if (Holds(network.Live(net, by)))
                return Live(net, by, _ => true);
        return null;
    }

    /// <summary>How a conductor of this supply makes the net live; null when none does.</summary>
    public ConductingPath? Live(string net, string supply)
    {
        if (!Holds(network.LiveFrom(net, supply)))
            return null;
        var index = network.Sources.IndexOf(supply);
        return Enum.GetValues<LiveBy>()
            .Select(by => Live(net, by, s => s.SupplyIndex == index))
            .FirstOrDefault(path => path is not null);
    }

    /// <summary>
    /// The ways of the two conductors that energise the nets with a voltage in the band, at grade solid or load; empty
    /// when none do.
    /// </summary>
    public IReadOnlyList<ConductingPath> Energised(string a, string b, Grade grade, double low, double? high)
    {
        var mesh = network.Mesh;
        if (Holds(network.Joined(a, b)))
            return [];
        var pairs =
            from supply in network.Sources.Lasting
            from one in On(supply)
            from other in On(supply)
            where one.InBand(other, low, high)
            let first = Search([one], mesh.Net(a), s => Onward(s, grade))
            where first is not null
            let second = Search([other], mesh.Net(b), s => Onward(s, grade))
            where second is not null
            orderby first.Steps.Count + second.Steps.Count
            select new[] { first, second };
        return pairs.FirstOrDefault() ?? [];
    }

    /// <summary>
    /// What makes a short of the supply: the path between two of its conductors of different voltage, or the paths that
    /// join it and the supplies shorted with it. Empty when it is not shorted.
    /// </summary>
    public IReadOnlyList<ConductingPath> Short(string supply)
    {
        if (!Holds(network.Short(supply)))
            return [];
        var own = On(network.Sources.BySupply[network.Sources.IndexOf(supply)]);
        var within = Paths(own, own).FirstOrDefault() ?? ThroughDiode(own);
        return within is not null ? [within] : Joins(own);
    }

    private ConductingPath? Live(string net, LiveBy by, Func<Source, bool> counts)
    {
        var begin = network
            .Sources.All.Where(s => (by == LiveBy.Stored || !s.IsStored) && counts(s))
            .Where(s => Holds(network.Unearthed(s)));
        return by == LiveBy.Stored
                ? Search(begin, network.Mesh.Net(net), s => Onward(s, Grade.Load)) ?? Loosely(true)
            : by == LiveBy.Solid ? Search(begin, network.Mesh.Net(net), s => Onward(s, Grade.Load))
            : Loosely(by == LiveBy.Backfeed);

        ConductingPath? Loosely(bool couplings) =>
            Search(begin, network.Mesh.Net(net), s => Touching(s, couplings));
    }

    /// <summary>Load reach along any path; or loosely, from then on past no net that earth holds.</summary>
    private IEnumerable<(Spot, Hop)> Touching(Spot spot, bool couplings)
    {
        foreach (var on in spot.Loosely ? [] : Onward(spot, Grade.Load))
            yield return on;
        if (IsHeld(spot.Net))
            yield break;
        var loose = hops.Touching(spot.Net).Concat(couplings ? hops.Coupled(spot.Net) : []);
        foreach (var hop in loose.Where(h => !IsHeld(h.To)))
            yield return (new(hop.To, Polarity.Alternating, Loosely: true), hop);
    }

    private IEnumerable<(Spot, Hop)> Onward(Spot spot, Grade grade) =>
        (
            grade == Grade.Solid ? hops.Solid(spot.Net, spot.Polarity) : hops.Load(spot.Net, spot.Polarity)
        ).Select(hop => (spot with { Net = hop.To }, hop));

    private IEnumerable<(Spot, Hop)> Metallic(Spot spot) =>
        hops.Solid(spot.Net).Select(hop => (spot with { Net = hop.To }, hop));

    /// <summary>Solid paths between conductors of two supplies, or differing ones of one; shortest first.</summary>
    private IEnumerable<ConductingPath> Paths(IReadOnlyList<Source> from, IReadOnlyList<Source> to)
    {
        var paths =
            from a in @from
            from b in to
            where a.SupplyIndex != b.SupplyIndex || a.Index < b.Index && !a.SameVoltage(b)
            select Search([a], b.Net, Metallic);
        return paths.OfType<ConductingPath>().OrderBy(path => path.Steps.Count);
    }

    private ConductingPath? ThroughDiode(IReadOnlyList<Source> own)
    {
        var ways =
            from diode in network.Mesh.Links
            where diode.Type == ElementType.Diode && Holds(diode.Closed)
            from plus in own
            where plus.Conductor.Polarity == Polarity.Plus
            let there = Search([plus], diode.A, s => Onward(s, Grade.Solid))
            where there is not null
            from minus in own
            where minus.Conductor.Polarity == Polarity.Minus
            let back = Search([minus], diode.B, s => Onward(s, Grade.Solid))
            where back is not null
            select new ConductingPath(
                there.Supply,
                there.Conductor,
                [.. there.Nets, .. back.Nets.Reverse()],
                [.. there.Steps, diode.Element.Id, .. back.Steps.Reverse()]
            );
        return ways.FirstOrDefault();
    }

    /// <summary>The joins between supplies that are shorted together, those of the supply's own first.</summary>
    private List<ConductingPath> Joins(Source[] own)
    {
        var found = new List<ConductingPath>();
        var waiting = network
            .Sources.Lasting.Select(On)
            .Where(s => s.Length > 0 && s[0].SupplyIndex != own[0].SupplyIndex)
            .Where(s => Holds(network.Short(s[0].Supply.Name)))
            .ToList();
        var open = new List<Source[]> { own };
        while (open.Count > 0)
        {
            var supply = open[0];
            open.RemoveAt(0);
            foreach (var other in open.Concat(waiting).ToArray())
            {
                var before = found.Count;
                found.AddRange(Paths(supply, other));
                if (found.Count > before && waiting.Remove(other))
                    open.Add(other);
            }
        }
        return found;
    }

    private Source[] On(IReadOnlyList<Source> sources) => [.. sources.Where(s => !s.IsStored && Holds(s.On))];

    private bool IsHeld(int net)
    {
        if (!held.TryGetValue(net, out var result))
            held.Add(net, result = Holds(network.EarthTied(network.Netlist.Nets[net])));
        return result;
    }

    private ConductingPath? Search(
        IEnumerable<Source> begin,
        int target,
        Func<Spot, IEnumerable<(Spot, Hop)>> onward
    )
    {
        var cameBy = new Dictionary<Spot, (Spot From, Hop Hop)?>();
        var startedAt = new Dictionary<Spot, Source>();
        var queue = new Queue<Spot>();
        foreach (var source in begin)
        {
            var spot = new Spot(source.Net, source.Conductor.Polarity, Loosely: false);
            if (!cameBy.TryAdd(spot, null))
                continue;
            startedAt.Add(spot, source);
            queue.Enqueue(spot);
        }
        while (queue.TryDequeue(out var spot))
        {
            if (spot.Net == target)
                return PathTo(spot, cameBy, startedAt);
            foreach (var (next, hop) in onward(spot))
                if (cameBy.TryAdd(next, (spot, hop)))
                    queue.Enqueue(next);
        }
        return null;
    }

    private ConductingPath PathTo(
        Spot end,
        Dictionary<Spot, (Spot From, Hop Hop)?> cameBy,
        Dictionary<Spot, Source> startedAt
    )
    {
        var nets = new List<string>();
        var steps = new List<string>();
        var spot = end;
        for (; cameBy[spot] is { } came; spot = came.From)
        {
            nets.Insert(0, network.Netlist.Nets[spot.Net]);
            steps.Insert(0, came.Hop.By);
        }
        var source = startedAt[spot];
        return new(
            source.Supply.Name,
            source.Conductor.Name,
            [network.Netlist.Nets[spot.Net], .. nets],
            steps
        );
    }

    private bool Holds(Diagram condition) => network.States.Holds(condition, state);

    /// <summary>A net, and how it was come to: by which polarity's conductor, and whether loosely.</summary>
    private readonly record struct Spot(int Net, Polarity Polarity, bool Loosely);
}
