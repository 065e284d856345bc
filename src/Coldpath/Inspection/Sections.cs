using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using QuikGraph.Algorithms.ConnectedComponents;

namespace Coldpath.Inspection;

/// <summary>Nets still joined by closed elements once contacts, semiconductors and isolators are taken out.</summary>
/// <param name="Nets">In the netlist's order.</param>
/// <param name="Devices">Tags of devices with a terminal here, in declared order.</param>
/// <param name="Points">The terminals, in the netlist's order.</param>
public sealed record Section(
    IReadOnlyList<string> Nets,
    IReadOnlyList<string> Devices,
    IReadOnlyList<string> Points
);

/// <summary>The sections of a panel and what can be opened ahead of them.</summary>
public sealed class Sections
{
    private readonly Evidence evidence;
    private readonly HashSet<string> isolating;
    private readonly Lazy<Network> allIsolatorsOut;
    private readonly Lazy<Network> allContactsOut;
    private readonly Lazy<Network> emptied;
    private readonly Lazy<IReadOnlyList<PoleLeft>> leftLive;

    public Sections(Evidence evidence)
    {
        this.evidence = evidence;
        emptied = new(() => new(evidence.Whole.Netlist.WithoutStores(), evidence.Whole.States));
        isolating = [.. evidence.Devices.Isolators.SelectMany(d => d.Isolates!.Elements)];
        allIsolatorsOut = new(() => Emptied.Without(isolating));
        allContactsOut = new(() =>
            Emptied.Without(isolating.Concat(evidence.Netlist.Elements.Where(IsContact).Select(e => e.Id)))
        );
        leftLive = new(() => [.. PolesLeftClosed.ByIsolators(evidence)]);
        All = Find();
    }

    public IReadOnlyList<Section> All { get; }

    /// <summary>The network with every store empty: discharging is a remedy of its own.</summary>
    private Network Emptied => emptied.Value;

    /// <summary>
    /// Everything in sections that no set of isolating devices makes dead, as one; null when there is nothing. Sections
    /// that hold a supply's own conductor are left out, and those that an isolator with too few poles leaves live
    /// (another finding). With <paramref name="byContacts"/> sections that contacts could still switch off, without it
    /// those that nothing can.
    /// </summary>
    public Section? NotIsolated(bool byContacts)
    {
        var found = All.Select(ToBeIsolated)
            .Where(s => s.Devices.Count > 0)
            .Where(s =>
                StaysLive(s, allIsolatorsOut.Value) && StaysLive(s, allContactsOut.Value) != byContacts
            )
            .Where(s => !IsLeftLive(s) && !(byContacts && IsFedByUnswitched(s)))
            .ToArray();
        var tags = found.SelectMany(s => s.Devices).ToHashSet();
        return found.Length == 0
            ? null
            : new(
                [.. found.SelectMany(s => s.Nets)],
                [.. evidence.Devices.All.Select(d => d.Tag).Where(tags.Contains)],
                [.. found.SelectMany(s => s.Points)]
            );
    }

    /// <summary>Contacts part it from a section that nothing can switch off: that one is the finding.</summary>
    private bool IsFedByUnswitched(Section section) =>
        NotIsolated(byContacts: false) is { } unswitched
        && unswitched.Nets.Any(net =>
            evidence.Table.Meet(
                evidence.Behaviour.Space.Domain,
                evidence.Network.Joined(section.Nets[0], net)
            )
        );

    /// <summary>Live only past an isolator with too few poles, or through the load behind it.</summary>
    private bool IsLeftLive(Section section) =>
        leftLive.Value.Any(left =>
            left.Motor.Terminals.Any(terminal =>
                evidence.Table.Meet(evidence.Settled, evidence.Network.Joined(section.Nets[0], terminal))
            ) || !StaysLive(section, Emptied.Without(isolating.Concat(left.Motor.Elements)))
        );

    /// <summary>The section of a net.</summary>
    public Section Of(string net) => All.First(s => s.Nets.Contains(net));

    /// <summary>Live in some assignment, whatever else stands how; wires and coils whole, controls obeying.</summary>
    private static bool StaysLive(Section section, Network network) =>
        section.Nets.Any(net => network.States.Table.Meet(network.Live(net), Freedom.Of(network.States)));

    /// <summary>
    /// In a section that holds a supply's own conductor only what uses current has to be isolated: the line side of the
    /// isolators themselves is dead when the supply is.
    /// </summary>
    private Section ToBeIsolated(Section section)
    {
        if (!HoldsSource(section))
            return section;
        var users = evidence
            .Netlist.Elements.Where(e => e.Type == ElementType.Load)
            .Where(e => section.Nets.Contains(e.A) || section.Nets.Contains(e.B))
            .Select(e => e.Device)
            .ToHashSet();
        return section with
        {
            Devices = [.. section.Devices.Where(users.Contains)],
            Points =
            [
                .. section.Points.Where(p =>
                    users.Any(tag => p.StartsWith(tag + ":", StringComparison.Ordinal))
                ),
            ],
        };
    }

    private bool HoldsSource(Section section) =>
        evidence.Netlist.Supplies.SelectMany(s => s.Conductors).Any(c => section.Nets.Contains(c.Net));

    private static bool IsContact(Element element) =>
        element.Type is ElementType.Contact or ElementType.Semiconductor;

    private List<Section> Find()
    {
        var netlist = evidence.Netlist;
        var graph = new QuikGraph.UndirectedGraph<string, QuikGraph.SEdge<string>>(true);
        graph.AddVertexRange(netlist.Nets);
        foreach (var e in netlist.Elements.Where(Joins))
            graph.AddEdge(new(e.A, e.B));
        var components = new ConnectedComponentsAlgorithm<string, QuikGraph.SEdge<string>>(graph);
        components.Compute();
        var points = netlist
            .Points.Where(p => p.Device is not null)
            .ToLookup(p => components.Components[p.Net]);
        return
        [
            .. netlist
                .Nets.Where(net => net != netlist.Earth)
                .GroupBy(net => components.Components[net])
                .Where(g => g.Key != components.Components[netlist.Earth])
                .Select(g => SectionOf([.. g], [.. points[g.Key]])),
        ];
    }

    private Section SectionOf(IReadOnlyList<string> nets, IReadOnlyList<Point> points)
    {
        var tags = points.Select(p => p.Device!).ToHashSet();
        return new(
            nets,
            [.. evidence.Devices.All.Select(d => d.Tag).Where(tags.Contains)],
            [.. points.Select(p => p.Name)]
        );
    }

    /// <summary>Bonds to earth do not make one section of all that is earthed.</summary>
    private bool Joins(Element e) =>
        e.Type is ElementType.Conductor or ElementType.Thermal
        && !isolating.Contains(e.Id)
        && e.A != evidence.Netlist.Earth
        && e.B != evidence.Netlist.Earth;
}
