using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// What conducts, whatever is fed: the nets and their guarded links, and the eliminated graph of each kind of reach.
/// Each is made when first asked for; kinds that come to the same graph share it.
/// </summary>
internal sealed class Mesh
{
    private readonly Dictionary<string, int> nets = [];
    private readonly Dictionary<(Grade Grade, Polarity Polarity), Elimination> reaches = [];
    private readonly Dictionary<int, Spread> joins = [];
    private readonly Lazy<Elimination> solid;
    private readonly Lazy<Elimination> sound;
    private readonly Lazy<Elimination> conductors;
    private readonly bool hasDiodes;
    private readonly bool hasSeries;

    /// <param name="netlist">Whose nets and elements these are.</param>
    /// <param name="states">Its variables.</param>
    /// <param name="only">For some elements, a further condition for conducting and leaking.</param>
    public Mesh(Netlist netlist, StateSpace states, IReadOnlyDictionary<string, Diagram> only)
    {
        Netlist = netlist;
        States = states;
        foreach (var net in netlist.Nets)
            nets.Add(net, nets.Count);
        Links = [.. netlist.Elements.Select(e => LinkOf(e, only))];
        ById = Links.ToDictionary(l => l.Element.Id);
        hasDiodes = Links.Any(l => l.Type == ElementType.Diode && !l.Closed.IsFalse);
        hasSeries = Links.Any(l => l.Type == ElementType.Series && !l.Closed.IsFalse);
        solid = new(() => Eliminate(l => l.IsSolid));
        sound = new(() =>
            Links.Any(l => l.Type == ElementType.Fault && !l.Closed.IsFalse)
                ? Eliminate(l => l.IsSolid && l.Type != ElementType.Fault)
                : solid.Value
        );
        conductors = new(() => Eliminate(l => l.Type == ElementType.Conductor));
    }

    public Netlist Netlist { get; }

    public StateSpace States { get; }

    public DiagramTable Table => States.Table;

    public IReadOnlyList<Link> Links { get; }

    public IReadOnlyDictionary<string, Link> ById { get; }

    public int NetCount => nets.Count;

    public int Earth => Net(Netlist.Earth);

    /// <summary>Joined by closed conductors alone.</summary>
    public Elimination Conductors => conductors.Value;

    /// <summary>Joined solidly, faults left out.</summary>
    public Elimination Sound => sound.Value;

    public int Net(string name) =>
        nets.TryGetValue(name, out var net)
            ? net
            : throw new ArgumentException($"no net {name}", nameof(name));

    /// <summary>In one solid component.</summary>
    public Diagram Joined(int a, int b)
    {
        if (a == b)
            return Diagram.True;
        if (!joins.TryGetValue(a, out var from))
        {
            if (joins.TryGetValue(b, out var back))
                return back[a];
            from = solid.Value.Spread(KeyValuePair.Create(a, Diagram.True));
            joins.Add(a, from);
        }
        return from[b];
    }

    /// <summary>
    /// The eliminated graph along which a conductor of the polarity reaches at the grade. Diodes are passed in the
    /// polarity's direction, at grade loose both ways; couplings count at grade loose as links between like-numbered
    /// terminals.
    /// </summary>
    public Elimination Reach(Grade grade, Polarity polarity)
    {
        if (grade == Grade.Load && !hasSeries)
            grade = Grade.Solid;
        if (!hasDiodes || grade == Grade.Loose)
            polarity = Polarity.Alternating;
        if (grade == Grade.Solid && !hasDiodes)
            return solid.Value;
        if (!reaches.TryGetValue((grade, polarity), out var reach))
        {
            reach = new(Table, ReachGraph(grade, polarity));
            reaches.Add((grade, polarity), reach);
        }
        return reach;
    }

    private GuardedGraph ReachGraph(Grade grade, Polarity polarity)
    {
        var graph = new GuardedGraph(Table, NetCount);
        foreach (var link in Links)
        {
            if (link.Type == ElementType.Diode)
                AddDiode(graph, link, polarity);
            else if (
                link.IsSolid
                || link.Type == ElementType.Series && grade != Grade.Solid
                || grade == Grade.Loose
            )
                graph.Join(link.A, link.B, link.Closed);
            if (grade == Grade.Loose)
                graph.Join(link.A, link.B, link.Leaks);
        }
        if (grade == Grade.Loose)
            AddCouplings(graph);
        return graph;
    }

    private static void AddDiode(GuardedGraph graph, Link diode, Polarity polarity)
    {
        if (polarity != Polarity.Minus)
            graph.Direct(diode.A, diode.B, diode.Closed);
        if (polarity != Polarity.Plus)
            graph.Direct(diode.B, diode.A, diode.Closed);
    }

    /// <summary>Each coupling as links between the like-numbered terminals of each two of its windings.</summary>
    public void AddCouplings(GuardedGraph graph)
    {
        foreach (var coupling in Couplings())
            for (var i = 0; i < coupling.Windings.Count; i++)
            for (var j = i + 1; j < coupling.Windings.Count; j++)
                foreach (var (a, b) in coupling.Windings[i].Zip(coupling.Windings[j]))
                {
                    if (!coupling.FirstDrives)
                        graph.Join(Net(a), Net(b), Diagram.True);
                    else if (i == 0)
                        graph.Direct(Net(a), Net(b), Diagram.True);
                }
    }

    /// <summary>The converters' windings and the other couplings.</summary>
    public IEnumerable<Coupling> Couplings() =>
        Netlist
            .Converters.Where(c => c.Windings.Count > 0)
            .Select(c => new Coupling(c.Name, c.Windings, FirstDrives: false))
            .Concat(Netlist.Couplings);

    private Elimination Eliminate(Func<Link, bool> takes)
    {
        var graph = new GuardedGraph(Table, NetCount);
        foreach (var link in Links.Where(takes))
            graph.Join(link.A, link.B, link.Closed);
        return new(Table, graph);
    }

    private Link LinkOf(Element element, IReadOnlyDictionary<string, Diagram> only)
    {
        var kept = only.GetValueOrDefault(element.Id, Diagram.True);
        var closed = States.Guard(element.Closed);
        var leaks =
            element.Leaks is { } guard ? States.Guard(guard)
            : element.Type == ElementType.Semiconductor ? !closed
            : Diagram.False;
        return new(element, Net(element.A), Net(element.B), Table.And(closed, kept), Table.And(leaks, kept));
    }
}
