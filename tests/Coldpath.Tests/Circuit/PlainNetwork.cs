using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>
/// The network in one state, by the definitions word for word: flood fills, all paths, all cycles, every node taken
/// out. It shares nothing with the engine but the netlist, and is far too slow for anything but comparing.
/// </summary>
internal sealed partial class PlainNetwork
{
    private readonly Netlist netlist;
    private readonly IReadOnlyDictionary<string, string> values;
    private readonly Dictionary<string, int> component = [];
    private readonly List<(Supply Supply, SupplyConductor Conductor)> on = [];
    private readonly HashSet<string> activeOutputs = [];
    private readonly Dictionary<(string From, Grade, Polarity?), HashSet<string>> reached = [];
    private Element[]? conducting;
    private Element[]? leaking;
    private HashSet<string>? hardTied;
    private HashSet<string>? bonded;
    private HashSet<string>? earthTied;

    /// <summary>By which supplies count; a question that is asked of many nets is one delegate.</summary>
    private readonly Dictionary<(Func<Supply, bool>, bool), HashSet<string>> live = [];

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
            earthTied = null;
            live.Clear();
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

    private Element[] Conducting => conducting ??= [.. netlist.Elements.Where(e => Holds(e.Closed))];

    private Element[] Leaking =>
        leaking ??= [
            .. netlist.Elements.Where(e =>
                e.Leaks is { } leaks ? Holds(leaks) : e.Type == ElementType.Semiconductor && !Holds(e.Closed)
            ),
        ];

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
        ReachedFrom(conductor.Net, grade, conductor.Polarity).Contains(net);

    private HashSet<string> ReachedFrom(string net, Grade grade, Polarity? polarity)
    {
        if (!reached.TryGetValue((net, grade, polarity), out var result))
            reached.Add((net, grade, polarity), result = Flood([net], LinksAt(grade, polarity)));
        return result;
    }
}
