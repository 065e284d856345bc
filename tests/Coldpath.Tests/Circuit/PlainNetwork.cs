using System.Numerics;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>
/// The network in one state, by the definitions word for word: flood fills, all paths, all cycles, every node taken
/// out. It shares nothing with the engine but the netlist, and is far too slow for anything but comparing.
/// </summary>
internal sealed class PlainNetwork
{
    private readonly Netlist netlist;
    private readonly IReadOnlyDictionary<string, string> values;
    private readonly Dictionary<string, int> component = [];
    private readonly List<(Supply Supply, SupplyConductor Conductor)> on = [];
    private readonly HashSet<string> activeOutputs = [];

    public PlainNetwork(Netlist netlist, IReadOnlyDictionary<string, string> values)
    {
        this.netlist = netlist;
        this.values = values;
        var next = 0;
        foreach (var net in netlist.Nets)
            if (!component.ContainsKey(net))
            {
                foreach (var member in Flood([net], SolidLinks(withFaults: true)))
                    component[member] = next;
                next++;
            }
        int before;
        do
        {
            before = activeOutputs.Count;
            on = [.. SourcesOn()];
            foreach (var converter in netlist.Converters.Where(c => Holds(c.When)).ToArray())
                activeOutputs.Add(converter.Output.Name);
        } while (activeOutputs.Count > before);
    }

    private IEnumerable<Supply> AllSupplies =>
        netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));

    private IEnumerable<(Supply Supply, SupplyConductor Conductor)> Lasting =>
        on.Where(s => s.Supply.Store is null);

    public bool Holds(Expression expression) =>
        expression switch
        {
            Constant c => c.Value,
            VariableIs v => values[v.Variable] == v.Value,
            Not n => !Holds(n.Term),
            All a => a.Terms.All(Holds),
            Any a => a.Terms.Any(Holds),
            Closed c => Holds(netlist.Elements.Single(e => e.Id == c.Element).Closed),
            Joined j => Joined(j.A, j.B),
            Live l => IsLive(l.Net),
            Energised e => e.Grade == Grade.Loose
                ? WouldCarry(e.A, e.B)
                : Energised(e.A, e.B, e.Grade, e.Low, e.High ?? double.MaxValue),
            Fed f => Fed(f),
            SinglePhased s => Single([s.A, s.B, s.C]),
            Carries c => Carries(c.Element),
            Runs r => Runs(netlist.Loads.Single(l => l.Name == r.Load), r.Turns),
            InShort s => Shorted().Contains(s.Supply),
            _ => throw new NotSupportedException(),
        };

    public bool Joined(string a, string b) => component[a] == component[b];

    // Reach

    private IEnumerable<Element> Conducting => netlist.Elements.Where(e => Holds(e.Closed));

    private IEnumerable<Element> Leaking =>
        netlist.Elements.Where(e =>
            e.Leaks is { } leaks ? Holds(leaks) : e.Type == ElementType.Semiconductor && !Holds(e.Closed)
        );

    private static bool IsSolid(Element e) =>
        e.Type is not (ElementType.Load or ElementType.Series or ElementType.Diode);

    private static IEnumerable<(string From, string To)> BothWays(IEnumerable<Element> elements) =>
        elements.SelectMany(e => new[] { (e.A, e.B), (e.B, e.A) });

    private List<(string From, string To)> SolidLinks(bool withFaults) =>
        [.. BothWays(Conducting.Where(e => IsSolid(e) && (withFaults || e.Type != ElementType.Fault)))];

    private List<(string From, string To)> LinksAt(Grade grade, Polarity? polarity)
    {
        var links = SolidLinks(withFaults: true);
        if (grade != Grade.Solid)
            links.AddRange(BothWays(Conducting.Where(e => e.Type == ElementType.Series)));
        if (grade == Grade.Loose)
        {
            links.AddRange(BothWays(Conducting.Concat(Leaking)));
            links.AddRange(NumberedCouplings());
        }
        if (polarity is { } direction)
            links.AddRange(DiodeLinks(direction));
        return links;
    }

    private IEnumerable<(string From, string To)> DiodeLinks(Polarity polarity) =>
        from diode in Conducting
        where diode.Type == ElementType.Diode
        from link in BothWays([diode])
        where polarity != (link.From == diode.A ? Polarity.Minus : Polarity.Plus)
        select link;

    private IEnumerable<Coupling> Couplings =>
        netlist.Converters.Select(c => new Coupling(c.Name, c.Windings, false)).Concat(netlist.Couplings);

    private IEnumerable<(string From, string To)> NumberedCouplings()
    {
        foreach (var coupling in Couplings)
            for (var i = 0; i < coupling.Windings.Count; i++)
            for (var j = 0; j < coupling.Windings.Count; j++)
                if (i != j && (!coupling.FirstDrives || i == 0))
                    foreach (var link in coupling.Windings[i].Zip(coupling.Windings[j]))
                        yield return link;
    }

    private static HashSet<string> Flood(
        IEnumerable<string> from,
        IEnumerable<(string From, string To)> links
    )
    {
        var next = links.ToLookup(l => l.From, l => l.To);
        var seen = new HashSet<string>(from);
        var open = new Queue<string>(seen);
        while (open.TryDequeue(out var net))
            foreach (var neighbour in next[net])
                if (seen.Add(neighbour))
                    open.Enqueue(neighbour);
        return seen;
    }

    private bool Reaches(SupplyConductor conductor, string net, Grade grade) =>
        Flood([conductor.Net], LinksAt(grade, conductor.Polarity)).Contains(net);

    // Sources

    private IEnumerable<(Supply, SupplyConductor)> SourcesOn() =>
        from supply in AllSupplies
        where netlist.Supplies.Contains(supply) || activeOutputs.Contains(supply.Name)
        where Holds(supply.Present)
        from conductor in supply.Conductors
        where Holds(conductor.Present)
        select (supply, conductor);

    private static Complex Volts(SupplyConductor c) =>
        c.Polarity == Polarity.Minus
            ? -Math.Abs(c.Volts)
            : Complex.FromPolarCoordinates(c.Volts, c.Degrees * Math.PI / 180);

    /// <summary>Without passing diodes, but at grade loose.</summary>
    private bool Comes(SupplyConductor conductor, string net, Grade grade) =>
        Flood([conductor.Net], LinksAt(grade, null)).Contains(net);

    private static double Between(SupplyConductor a, SupplyConductor b) => (Volts(a) - Volts(b)).Magnitude;

    private static bool Differ(SupplyConductor a, SupplyConductor b) => Between(a, b) > 1e-6;

    public bool Energised(string a, string b, Grade grade, double low, double high) =>
        !Joined(a, b)
        && (
            from one in Lasting
            from other in Lasting
            where one.Supply == other.Supply && Differ(one.Conductor, other.Conductor)
            let volts = Between(one.Conductor, other.Conductor)
            where volts > low - 1e-6 && volts < high + 1e-6
            where Reaches(one.Conductor, a, grade) && Reaches(other.Conductor, b, grade)
            select volts
        ).Any();

    private static bool Agree(params double[] sides) =>
        sides.Min() > 1e-6 && sides.Max() - sides.Min() <= 0.1 * sides.Max();

    private static bool Triangle(SupplyConductor a, SupplyConductor b, SupplyConductor c) =>
        Agree(Between(a, b), Between(b, c), Between(c, a));

    /// <summary>Forward: the second lags the first, as L2 lags L1.</summary>
    private static bool Forward(SupplyConductor a, SupplyConductor b, SupplyConductor c)
    {
        var centre = (Volts(a) + Volts(b) + Volts(c)) / 3;
        return ((Volts(b) - centre) / (Volts(a) - centre)).Phase < 0;
    }

    public bool Fed(Fed fed) =>
        !Joined(fed.A, fed.B)
        && !Joined(fed.B, fed.C)
        && !Joined(fed.A, fed.C)
        && (
            from a in Lasting
            from b in Lasting
            from c in Lasting
            where a.Supply == b.Supply && b.Supply == c.Supply
            let three = (A: a.Conductor, B: b.Conductor, C: c.Conductor)
            where Triangle(three.A, three.B, three.C)
            where
                fed.Order == PhaseOrder.Any
                || (fed.Order == PhaseOrder.Forward) == Forward(three.A, three.B, three.C)
            where
                Comes(three.A, fed.A, fed.Grade)
                && Comes(three.B, fed.B, fed.Grade)
                && Comes(three.C, fed.C, fed.Grade)
            select three
        ).Any();

    public bool Single(IReadOnlyList<string> nets) =>
        Lasting
            .Where(s => nets.Any(net => Comes(s.Conductor, net, Grade.Load)))
            .GroupBy(s => s.Supply)
            .Any(supply => supply.Select(s => Rounded(Volts(s.Conductor))).Distinct().Count() == 2);

    private static (double, double) Rounded(Complex volts) =>
        (Math.Round(volts.Real, 6) + 0.0, Math.Round(volts.Imaginary, 6) + 0.0);

    // Earth and live

    public bool TiedHard(string net) => HardTied().Contains(net);

    private HashSet<string> HardTied() =>
        Flood([netlist.Earth], BothWays(Conducting.Where(e => e.Type == ElementType.Conductor)));

    private HashSet<string> BondedNets() => Flood([netlist.Earth], SolidLinks(withFaults: false));

    private List<SupplyConductor> Unearthed(Func<Supply, bool> which)
    {
        var (tied, bonded) = (HardTied(), BondedNets());
        bool Contradicted((Supply Supply, SupplyConductor Conductor) c) =>
            on.Any(d =>
                d.Supply == c.Supply && Differ(c.Conductor, d.Conductor) && bonded.Contains(d.Conductor.Net)
            );
        bool Earthed((Supply Supply, SupplyConductor Conductor) c) =>
            bonded.Contains(c.Conductor.Net) && (tied.Contains(c.Conductor.Net) || !Contradicted(c));
        return [.. on.Where(c => which(c.Supply) && !Earthed(c)).Select(c => c.Conductor)];
    }

    public bool EarthTied(string net) => EarthTiedNets().Contains(net);

    private HashSet<string> EarthTiedNets()
    {
        var (tied, bonded) = (HardTied(), BondedNets());
        bool Free(string net) => !tied.Contains(net);
        var contested = Unearthed(_ => true)
            .Where(c => Free(c.Net))
            .SelectMany(c =>
                Flood(
                    [c.Net],
                    SolidLinks(withFaults: false)
                        .Concat(DiodeLinks(c.Polarity))
                        .Where(l => Free(l.From) && Free(l.To))
                )
            )
            .ToHashSet();
        return [.. tied, .. bonded.Where(n => !contested.Contains(n))];
    }

    public bool IsLive(string net) => LiveNets(_ => true, true).Contains(net);

    public bool SolidlyLive(string net) =>
        !EarthTied(net) && Unearthed(s => s.Store is null).Exists(c => Reaches(c, net, Grade.Load));

    public bool LiveFrom(string net, string supply) => LiveNets(s => s.Name == supply, true).Contains(net);

    public bool LiveFrom(string net, Func<Supply, bool> which, bool couplings) =>
        LiveNets(which, couplings).Contains(net);

    private HashSet<string> LiveNets(Func<Supply, bool> which, bool couplings)
    {
        var held = EarthTiedNets();
        var reached = Unearthed(which)
            .SelectMany(c => Flood([c.Net], LinksAt(Grade.Load, c.Polarity)))
            .ToHashSet();
        var links = BothWays(Conducting.Concat(Leaking)).ToList();
        foreach (var coupling in couplings ? Couplings : [])
            for (var i = 0; i < coupling.Windings.Count; i++)
                foreach (var net in coupling.Windings[i])
                {
                    if (!coupling.FirstDrives || i == 0)
                        links.Add((net, "~" + coupling.Name));
                    if (!coupling.FirstDrives || i > 0)
                        links.Add(("~" + coupling.Name, net));
                }
        bool Free(string net) => !held.Contains(net);
        var live = Flood(reached.Where(Free), links.Where(l => Free(l.From) && Free(l.To)));
        return live;
    }

    // Shorts

    /// <summary>Every simple cycle of components and supply voltages, followed edge by edge.</summary>
    public HashSet<string> Shorted()
    {
        var sources = Lasting.ToArray();
        var edges = new List<Edge>();
        for (var i = 0; i < sources.Length; i++)
        for (var j = i + 1; j < sources.Length; j++)
            if (sources[i].Supply == sources[j].Supply)
                edges.Add(
                    new(
                        sources[i].Supply,
                        component[sources[i].Conductor.Net],
                        component[sources[j].Conductor.Net],
                        Volts(sources[j].Conductor) - Volts(sources[i].Conductor)
                    )
                );
        var shorted = new HashSet<string>();
        for (var first = 0; first < edges.Count; first++)
            if (!shorted.Contains(edges[first].Supply.Name))
                Follow(
                    edges[first].A,
                    edges[first].B,
                    [edges[first]],
                    [edges[first].Volts],
                    [edges[first].A]
                );
        foreach (var diode in Conducting.Where(e => e.Type == ElementType.Diode))
        foreach (var (supply, plus) in Lasting.Where(s => s.Conductor.Polarity == Polarity.Plus))
        foreach (var (same, minus) in Lasting.Where(s => s.Conductor.Polarity == Polarity.Minus))
            if (supply == same && Reaches(plus, diode.A, Grade.Solid) && Reaches(minus, diode.B, Grade.Solid))
                shorted.Add(supply.Name);
        return shorted;

        void Follow(int start, int at, List<Edge> used, List<Complex> steps, List<int> passed)
        {
            if (at == start)
            {
                var sums = used.Zip(steps).GroupBy(s => s.First.Supply.Group, s => s.Second);
                if (sums.Count() > 1 || sums.Any(s => s.Aggregate(Complex.Add).Magnitude > 1e-6))
                    shorted.UnionWith(used.Select(e => e.Supply.Name));
                return;
            }
            if (passed.Contains(at))
                return;
            foreach (var edge in edges.Except(used))
                if (edge.A == at && edge.A != edge.B)
                    Follow(start, edge.B, [.. used, edge], [.. steps, edge.Volts], [.. passed, at]);
                else if (edge.B == at && edge.A != edge.B)
                    Follow(start, edge.A, [.. used, edge], [.. steps, -edge.Volts], [.. passed, at]);
        }
    }

    private sealed class Edge(Supply supply, int a, int b, Complex volts)
    {
        public Supply Supply => supply;
        public int A => a;
        public int B => b;
        public Complex Volts => volts;
    }

    // Current

    public bool Carries(string id)
    {
        var element = netlist.Elements.Single(e => e.Id == id);
        if (!Holds(element.Closed) || element.Type == ElementType.Load && Joined(element.A, element.B))
            return false;
        return Lasting
            .Select(s => s.Supply)
            .Distinct()
            .Any(z => InBlock(z, element.A, element.B, [.. BothWays(Conducting)], s => s.Store is null));
    }

    public bool CarriesShort(string id)
    {
        var element = netlist.Elements.Single(e => e.Id == id);
        if (!Holds(element.Closed) || !IsSolid(element))
            return false;
        var links = SolidLinks(withFaults: true);
        links.AddRange(BothWays(Conducting.Where(ShortsThrough)));
        return Shorted()
            .Select(name => AllSupplies.Single(s => s.Name == name))
            .Any(z => InBlock(z, element.A, element.B, links, s => s.Store is null));
    }

    private bool ShortsThrough(Element diode) =>
        diode.Type == ElementType.Diode
        && (
            from plus in Lasting
            from minus in Lasting
            where plus.Supply == minus.Supply
            where plus.Conductor.Polarity == Polarity.Plus && minus.Conductor.Polarity == Polarity.Minus
            where
                Reaches(plus.Conductor, diode.A, Grade.Solid)
                && Reaches(minus.Conductor, diode.B, Grade.Solid)
            select plus
        ).Any();

    public bool WouldCarry(string a, string b)
    {
        if (Joined(a, b))
            return false;
        var links = BothWays(Conducting.Concat(Leaking))
            .Concat(NumberedCouplings().SelectMany(l => new[] { l, (l.To, l.From) }))
            .ToList();
        return on.Select(s => s.Supply).Distinct().Any(z => InBlock(z, a, b, links, _ => true));
    }

    /// <summary>Whatever node but z is taken out, one of the ends still reaches z.</summary>
    private bool InBlock(
        Supply z,
        string a,
        string b,
        List<(string From, string To)> links,
        Func<Supply, bool> counts
    )
    {
        var all = new List<(string From, string To)>(links);
        foreach (var (supply, conductor) in on.Where(s => counts(s.Supply)))
        {
            all.Add(("z " + supply.Name, conductor.Net));
            all.Add((conductor.Net, "z " + supply.Name));
        }
        var hub = "z " + z.Name;
        var nodes = all.SelectMany(l => new[] { l.From, l.To }).Append(a).Append(b).Distinct();
        return nodes
            .Where(v => v != hub)
            .All(v =>
            {
                var reached = Flood([hub], all.Where(l => l.From != v && l.To != v));
                return v != a && reached.Contains(a) || v != b && reached.Contains(b);
            });
    }

    // Loads

    public bool Runs(Load load, Turning turns) =>
        load.Modes.Any(mode =>
            mode.Joined.All(p => Joined(p.A, p.B))
            && mode.Apart.All(p => !Joined(p.A, p.B))
            && Feeders(mode.Feed.Count)
                .Any(feeders =>
                    (turns == Turning.Any || Turn(feeders, mode.Turns) == turns)
                    && Separate(feeders, [.. mode.Feed.Select(net => component[net])], 0, [])
                )
        );

    private IEnumerable<(Supply Supply, SupplyConductor[] Conductors)> Feeders(int terminals) =>
        from supply in Lasting.GroupBy(s => s.Supply, s => s.Conductor)
        from a in supply
        from b in supply
        where Differ(a, b)
        from chosen in terminals == 2
            ?
            [
                [a, b],
            ]
            : supply.Where(c => Triangle(a, b, c)).Select(c => new[] { a, b, c })
        select (supply.Key, chosen);

    private static Turning Turn((Supply Supply, SupplyConductor[] Conductors) feed, Turning forward)
    {
        var (c, direct) = (feed.Conductors, feed.Supply.Direct);
        var isForward =
            c.Length == 3 ? Forward(c[0], c[1], c[2]) : !direct || Volts(c[0]).Real > Volts(c[1]).Real;
        return (isForward, forward) switch
        {
            (false, Turning.Forward) => Turning.Reverse,
            (false, Turning.Reverse) => Turning.Forward,
            _ => forward,
        };
    }

    private bool Separate(
        (Supply Supply, SupplyConductor[] Conductors) feed,
        int[] terminals,
        int next,
        HashSet<int> taken
    )
    {
        if (next == terminals.Length)
            return true;
        return Paths(component[feed.Conductors[next].Net], terminals[next], [.. taken])
            .Any(path => Separate(feed, terminals, next + 1, [.. taken, .. path]));
    }

    private IEnumerable<HashSet<int>> Paths(int from, int to, HashSet<int> avoid)
    {
        if (avoid.Contains(from))
            yield break;
        if (from == to)
        {
            yield return [from];
            yield break;
        }
        foreach (var element in Conducting.Where(e => e.Type == ElementType.Series))
        {
            var (a, b) = (component[element.A], component[element.B]);
            foreach (var (near, far) in new[] { (a, b), (b, a) })
                if (near == from && far != from)
                    foreach (var path in Paths(far, to, [.. avoid, from]))
                        yield return [from, .. path];
        }
    }
}
