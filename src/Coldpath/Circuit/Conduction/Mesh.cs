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
    private readonly Dictionary<string, int> nets;
    private readonly Dictionary<(Grade Grade, Polarity? Polarity), Elimination> reaches = [];
    private readonly Dictionary<int, Spread> joins = [];
    private readonly Lazy<Islands> islands;
    private readonly Lazy<Elimination> solid;
    private readonly Lazy<Elimination> sound;
    private readonly Lazy<Elimination> conductors;
    private readonly bool hasSeries;

    /// <summary>The levels that <see cref="Within"/> depends on.</summary>
    private readonly HashSet<int> spokenOf;

    /// <param name="netlist">Whose nets and elements these are.</param>
    /// <param name="states">Its variables.</param>
    /// <param name="only">For some elements, a further condition for conducting and leaking.</param>
    /// <param name="within">The assignments that matter; what is said of others is void.</param>
    public Mesh(Netlist netlist, StateSpace states, IReadOnlyDictionary<string, Diagram> only, Diagram within)
        : this(
            netlist,
            states,
            within,
            netlist.Nets.Index().ToDictionary(n => n.Item, n => n.Index),
            mesh => netlist.Elements.Select(e => mesh.LinkOf(e, only))
        ) { }

    private Mesh(
        Netlist netlist,
        StateSpace states,
        Diagram within,
        Dictionary<string, int> nets,
        Func<Mesh, IEnumerable<Link>> links
    )
    {
        Netlist = netlist;
        States = states;
        Within = within;
        spokenOf = [.. States.Table.Support(within)];
        this.nets = nets;
        Links = [.. links(this)];
        ById = Links.ToDictionary(l => l.Element.Id);
        HasDiodes = Links.Any(l => l.Type == ElementType.Diode && !l.Closed.IsFalse);
        hasSeries = Links.Any(l => l.Type == ElementType.Series && !l.Closed.IsFalse);
        islands = new(() =>
            new(
                NetCount,
                Links.Where(l => l.Type != ElementType.Load && !l.Closed.IsFalse).Select(l => (l.A, l.B))
            )
        );
        solid = new(() => Eliminate(l => l.IsSolid));
        sound = new(() => Eliminate(l => IsAtEarth(l) && l.IsSolid && l.Type != ElementType.Fault));
        conductors = new(() => Eliminate(l => IsAtEarth(l) && l.Type == ElementType.Conductor));
    }

    public Netlist Netlist { get; }

    public StateSpace States { get; }

    public DiagramTable Table => States.Table;

    public IReadOnlyList<Link> Links { get; }

    public IReadOnlyDictionary<string, Link> ById { get; }

    public int NetCount => nets.Count;

    public int Earth => Net(Netlist.Earth);

    /// <summary>The assignments that matter.</summary>
    public Diagram Within { get; }

    public bool HasDiodes { get; }

    /// <summary>Joined by closed conductors alone; only where earth can come to.</summary>
    public Elimination Conductors => conductors.Value;

    /// <summary>Joined solidly, faults left out; only where earth can come to.</summary>
    public Elimination Sound => sound.Value;

    /// <summary>The same mesh with the elements taken out: they neither conduct nor leak.</summary>
    public Mesh Without(IReadOnlySet<string> elements) =>
        new(
            Netlist,
            States,
            Within,
            nets,
            _ =>
                Links.Select(l =>
                    elements.Contains(l.Element.Id)
                        ? l with
                        {
                            Closed = Diagram.False,
                            Leaks = Diagram.False,
                        }
                        : l
                )
        );

    /// <summary>The same mesh for this one state.</summary>
    public Mesh At(State state)
    {
        return new(Netlist, States, States.Of(state), nets, _ => Links.Select(Decided));

        Link Decided(Link link) => link with { Closed = Holding(link.Closed), Leaks = Holding(link.Leaks) };

        Diagram Holding(Diagram condition) => States.Holds(condition, state) ? Diagram.True : Diagram.False;
    }

    /// <summary>
    /// The guard as far as it matters. What <see cref="Within"/> does not speak of is left as it is: it stays small, and most
    /// of a panel is so while only a few parts may fail.
    /// </summary>
    public Diagram Guard(Expression guard) =>
        Guards.Variables(guard).Any(IsSpokenOf)
            ? Table.Within(States.Guard(guard), Within)
            : States.Guard(guard);

    private bool IsSpokenOf(string variable) =>
        States.LevelsOf(States.IndexOf(variable)).Any(spokenOf.Contains);

    public int Net(string name) =>
        nets.TryGetValue(name, out var net)
            ? net
            : throw new ArgumentException($"no net {name}", nameof(name));

    /// <summary>The same number for two nets that load reach, through diodes either way, can ever join.</summary>
    public int Island(int net) => islands.Value.Of(net);

    /// <summary>In one solid component.</summary>
    public Diagram Joined(int a, int b)
    {
        if (a == b)
            return Diagram.True;
        if (Island(a) != Island(b))
            return Diagram.False;
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
    /// The eliminated graph along which a conductor reaches at the grade. Diodes are passed in the direction of the
    /// polarity, and not at all when it is null; at grade loose both ways. Couplings count at grade loose, as links
    /// between like-numbered terminals.
    /// </summary>
    public Elimination Reach(Grade grade, Polarity? polarity)
    {
        if (grade == Grade.Load && !hasSeries)
            grade = Grade.Solid;
        if (grade == Grade.Loose)
            polarity = Polarity.Alternating;
        else if (!HasDiodes)
            polarity = null;
        if (grade == Grade.Solid && polarity is null)
            return solid.Value;
        if (!reaches.TryGetValue((grade, polarity), out var reach))
        {
            reach = new(Table, ReachGraph(grade, polarity));
            reaches.Add((grade, polarity), reach);
        }
        return reach;
    }

    private GuardedGraph ReachGraph(Grade grade, Polarity? polarity)
    {
        var graph = new GuardedGraph(Table, NetCount);
        foreach (var link in Links)
            if (
                link.IsSolid
                || link.Type == ElementType.Series && grade != Grade.Solid
                || grade == Grade.Loose
            )
                graph.Join(
                    link.A,
                    link.B,
                    grade == Grade.Loose ? Table.Or(link.Closed, link.Leaks) : link.Closed
                );
            else if (link.Type == ElementType.Diode && polarity is { } direction)
                AddDiode(graph, link, direction, link.Closed);
        if (grade == Grade.Loose)
            AddCouplings(graph);
        return graph;
    }

    /// <summary>A diode's link for a conductor of the polarity.</summary>
    public static void AddDiode(GuardedGraph graph, Link diode, Polarity polarity, Diagram passes)
    {
        if (polarity != Polarity.Minus)
            graph.Direct(diode.A, diode.B, passes);
        if (polarity != Polarity.Plus)
            graph.Direct(diode.B, diode.A, passes);
    }

    private void AddCouplings(GuardedGraph graph)
    {
        foreach (var (a, b, oneWay) in CouplingLinks())
            if (oneWay)
                graph.Direct(a, b, Diagram.True);
            else
                graph.Join(a, b, Diagram.True);
    }

    /// <summary>
    /// Each coupling as links between the like-numbered terminals of each two of its windings; one way from the first
    /// winding to each other where only the first drives.
    /// </summary>
    public IEnumerable<(int A, int B, bool OneWay)> CouplingLinks() =>
        from coupling in Couplings()
        from i in Enumerable.Range(0, coupling.FirstDrives ? 1 : coupling.Windings.Count)
        from j in Enumerable.Range(i + 1, coupling.Windings.Count - i - 1)
        from pair in coupling.Windings[i].Zip(coupling.Windings[j])
        select (Net(pair.First), Net(pair.Second), coupling.FirstDrives);

    /// <summary>The converters' windings and the other couplings.</summary>
    public IEnumerable<Coupling> Couplings() =>
        Netlist
            .Converters.Where(c => c.Windings.Count > 0)
            .Select(c => new Coupling(c.Name, c.Windings, FirstDrives: false))
            .Concat(Netlist.Couplings);

    private bool IsAtEarth(Link link) => Island(link.A) == Island(Earth);

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
        var closed = Guard(element.Closed);
        var leaks =
            element.Leaks is { } guard ? Guard(guard)
            : element.Type == ElementType.Semiconductor ? Guard(Expression.Negate(element.Closed))
            : Diagram.False;
        return new(element, Net(element.A), Net(element.B), Table.And(closed, kept), Table.And(leaks, kept));
    }
}
