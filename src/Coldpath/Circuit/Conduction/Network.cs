using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// The network's predicates as conditions over a netlist's variables: what is joined, reached, live, shorted,
/// energised, carrying, running. Each is worked out when first asked for and kept.
/// </summary>
public sealed class Network
{
    private readonly Mesh mesh;
    private readonly Feeding feeding;
    private readonly Lazy<Earthing> earthing;
    private readonly Lazy<Liveness> liveness;
    private readonly Lazy<Shorts> shorts;
    private readonly Lazy<Carrying> carrying;
    private readonly Running running;
    private readonly Dictionary<Expression, Diagram> known = [];
    private readonly Dictionary<string, Load> loads;

    /// <param name="netlist">Its elements, supplies and loads.</param>
    /// <param name="states">Its variables.</param>
    /// <param name="only">For some element ids, a further condition without which they neither conduct nor leak.</param>
    /// <param name="within">
    /// The assignments that matter (no failure, say): answers are exact on these and void on others, and much
    /// smaller for it. All when null.
    /// </param>
    public Network(
        Netlist netlist,
        StateSpace states,
        IReadOnlyDictionary<string, Diagram>? only = null,
        Diagram? within = null
    )
        : this(
            new Mesh(netlist, states, only ?? new Dictionary<string, Diagram>(), within ?? Diagram.True),
            active: null
        ) { }

    private Network(Mesh mesh, IReadOnlyList<Diagram>? active)
    {
        this.mesh = mesh;
        Sources = new(mesh, active ?? ActiveConverters(mesh));
        feeding = new(mesh, Sources);
        earthing = new(() => new(mesh, Sources));
        liveness = new(() => new(mesh, Sources, earthing.Value));
        shorts = new(() => new(mesh, Sources, feeding));
        carrying = new(() => new(mesh, Sources, shorts.Value));
        running = new(mesh, Sources);
        loads = mesh.Netlist.Loads.ToDictionary(l => l.Name);
    }

    public StateSpace States => mesh.States;

    public Netlist Netlist => mesh.Netlist;

    internal Mesh Mesh => mesh;

    internal Sources Sources { get; }

    private DiagramTable Table => mesh.Table;

    /// <summary>The same netlist and states with the elements taken out.</summary>
    public Network Without(IEnumerable<string> elements) =>
        new(mesh.Without(elements.ToHashSet()), active: null);

    /// <summary>The same network for this one state: every answer is plainly true or false, and had at once.</summary>
    public Network At(State state) => new(mesh.At(state), active: null);

    /// <summary>
    /// Any condition of the netlist.
    /// </summary>
    /// <param name="expression">The condition.</param>
    /// <param name="given">Answers what the network alone cannot (<see cref="Quiet"/>); null leaves it to the network.</param>
    public Diagram Of(Expression expression, Func<Expression, Diagram?>? given = null) =>
        given?.Invoke(expression)
        ?? expression switch
        {
            Not n => !Of(n.Term, given),
            All a => Table.AllOf(a.Terms.Select(t => Of(t, given))),
            Any a => Table.AnyOf(a.Terms.Select(t => Of(t, given))),
            _ => OfAtom(expression),
        };

    /// <summary>The element conducts.</summary>
    public Diagram Closed(string element) => LinkOf(element).Closed;

    /// <summary>In one solid component.</summary>
    public Diagram Joined(string a, string b) => mesh.Joined(mesh.Net(a), mesh.Net(b));

    /// <summary>The supply, or converter's output, is a source: active and present, in one conductor at least.</summary>
    public Diagram Active(string supply) =>
        Table.AnyOf(Sources.BySupply[Sources.IndexOf(supply)].Select(s => s.On));

    /// <summary>Some conductor of the supply is on and reaches the net at the grade.</summary>
    public Diagram Reached(string net, string supply, Grade grade) =>
        Table.AnyOf(
            Sources
                .BySupply[Sources.IndexOf(supply)]
                .Select(source => feeding.Reaches(source, mesh.Net(net), grade))
        );

    /// <summary>This conductor of the supply is on and reaches the net at the grade.</summary>
    public Diagram Reached(string net, string supply, string conductor, Grade grade) =>
        Table.AnyOf(
            Sources
                .BySupply[Sources.IndexOf(supply)]
                .Where(source => source.Conductor.Name == conductor)
                .Select(source => feeding.Reaches(source, mesh.Net(net), grade))
        );

    /// <summary>Joined to earth by closed conductors alone.</summary>
    public Diagram TiedHard(string net) => earthing.Value.TiedHard(mesh.Net(net));

    /// <summary>Joined to earth through closed solid elements other than faults.</summary>
    public Diagram Bonded(string net) => earthing.Value.Bonded(mesh.Net(net));

    /// <summary>Earth holds the net at its own potential.</summary>
    public Diagram EarthTied(string net) => earthing.Value.EarthTied(mesh.Net(net));

    /// <summary>The conductor is on and earth does not hold it.</summary>
    internal Diagram Unearthed(Source source) => earthing.Value.Unearthed(source);

    public Diagram Live(string net) => liveness.Value.Live(mesh.Net(net));

    /// <summary>One of the nets is live; in a mesh far cheaper than each of them.</summary>
    public Diagram Live(IEnumerable<string> nets) => liveness.Value.Live([.. nets.Select(mesh.Net)]);

    /// <summary>Live in just this way: a live net in exactly one.</summary>
    public Diagram Live(string net, LiveBy by) => liveness.Value.Live(mesh.Net(net), by);

    /// <summary>Live by this supply's own conductors.</summary>
    public Diagram LiveFrom(string net, string supply) =>
        liveness.Value.LiveFrom(mesh.Net(net), Sources.IndexOf(supply));

    /// <summary>Live, and by extra-low voltage supplies only.</summary>
    public Diagram ExtraLowOnly(string net) => liveness.Value.ExtraLowOnly(mesh.Net(net));

    /// <summary>Some supply is part of a short.</summary>
    public Diagram AnyShort() => shorts.Value.Any;

    /// <summary>The supply is part of a short.</summary>
    public Diagram Short(string supply) => shorts.Value.Of(Sources.IndexOf(supply));

    /// <summary>Both supplies are on and share exactly one solid component: a note, no short.</summary>
    public Diagram JoinedAtOnePoint(string one, string other) =>
        shorts.Value.JoinedAtOnePoint(Sources.IndexOf(one), Sources.IndexOf(other));

    /// <summary>Both supplies are on and share two solid components or more: in parallel, a short or not.</summary>
    public Diagram JoinedTwice(string one, string other) =>
        shorts.Value.JoinedTwice(Sources.IndexOf(one), Sources.IndexOf(other));

    /// <summary>The element carries current.</summary>
    public Diagram Carries(string element) => carrying.Value.Carries(LinkOf(element));

    /// <summary>The element, a solid one, carries the current of a short.</summary>
    public Diagram CarriesShort(string element) => carrying.Value.CarriesShort(LinkOf(element));

    /// <summary>The element, a solid one, carries the current of a short that this supply is part of.</summary>
    public Diagram CarriesShort(string element, string supply) =>
        carrying.Value.CarriesShort(LinkOf(element), Sources.IndexOf(supply));

    /// <summary>
    /// Energised, with a voltage in the band. At grade loose the band is not judged: through loads and transformers
    /// worked backwards the voltage can be any.
    /// </summary>
    public Diagram Energised(string a, string b, Grade grade, double low, double? high) =>
        grade == Grade.Loose
            ? carrying.Value.WouldCarry(mesh.Net(a), mesh.Net(b))
            : feeding.Energised(mesh.Net(a), mesh.Net(b), grade, low, high);

    /// <summary>The load runs in some listed connection.</summary>
    public Diagram Runs(string load, Turning turns = Turning.Any) => running.Runs(loads[load], turns);

    /// <summary>The load runs in this one of its connections.</summary>
    public Diagram Runs(LoadMode mode, Turning turns = Turning.Any) => running.Runs(mode, turns);

    /// <summary>An element of the load carries current, but in no listed connection.</summary>
    public Diagram Abnormal(string load) =>
        Table.Except(Table.AnyOf(loads[load].Elements.Select(Carries)), Runs(load));

    /// <summary>
    /// Abnormal, and one of its terminals is live: what carries only as long as diodes are taken both ways is left out.
    /// </summary>
    public Diagram AbnormalAndLive(string load) =>
        Table.And(Abnormal(load), Table.AnyOf(TerminalsOf(loads[load]).Select(Live)));

    /// <summary>Abnormal, with exactly two voltages at the three terminals of one of its connections.</summary>
    public Diagram SinglePhasing(string load)
    {
        var two = loads[load]
            .Modes.Where(m => m.Feed.Count == 3)
            .Select(m => feeding.Single([.. m.Feed.Select(mesh.Net)]));
        return Table.And(Abnormal(load), Table.AnyOf(two));
    }

    /// <summary>
    /// Neither runs nor carries current, yet a terminal is live: one declared, an end of an element, or a net that one
    /// of its connections names.
    /// </summary>
    public Diagram StandsLive(string load) =>
        Table.AllOf(Table.AnyOf(TerminalsOf(loads[load]).Select(Live)), !Runs(load), !Abnormal(load));

    private IEnumerable<string> TerminalsOf(Load load) =>
        load
            .Elements.Select(id => LinkOf(id).Element)
            .SelectMany(e => new[] { e.A, e.B })
            .Concat(load.Modes.SelectMany(m => m.Feed))
            .Concat(load.Modes.SelectMany(m => m.Joined.Concat(m.Apart)).SelectMany(p => new[] { p.A, p.B }))
            .Concat(load.Terminals)
            .Distinct();

    private Diagram OfAtom(Expression atom)
    {
        if (!known.TryGetValue(atom, out var result))
        {
            result = Find(atom);
            known.Add(atom, result);
        }
        return result;
    }

    private Diagram Find(Expression atom) =>
        atom switch
        {
            Constant or VariableIs => States.Guard(atom),
            Closed c => Closed(c.Element),
            Joined j => Joined(j.A, j.B),
            Live l => Live(l.Net),
            Energised e => Energised(e.A, e.B, e.Grade, e.Low, e.High),
            Fed f => feeding.Fed(mesh.Net(f.A), mesh.Net(f.B), mesh.Net(f.C), f.Order, f.Grade),
            SinglePhased s => feeding.Single(mesh.Net(s.A), mesh.Net(s.B), mesh.Net(s.C)),
            Carries c => Carries(c.Element),
            Runs r => Runs(r.Load, r.Turns),
            InShort s => Short(s.Supply),
            _ => throw new ArgumentException(
                $"the network alone cannot answer {atom.GetType().Name}",
                nameof(atom)
            ),
        };

    private Link LinkOf(string element) =>
        mesh.ById.TryGetValue(element, out var link)
            ? link
            : throw new ArgumentException($"no element {element}", nameof(element));

    /// <summary>
    /// The least fixpoint from the primary supplies: a converter is active when its condition holds with the others
    /// as far as they are known to be.
    /// </summary>
    private static Diagram[] ActiveConverters(Mesh mesh)
    {
        var converters = mesh.Netlist.Converters;
        Diagram[] active = [.. converters.Select(_ => Diagram.False)];
        while (converters.Count > 0)
        {
            var network = new Network(mesh, active);
            Diagram[] next = [.. converters.Select((c, i) => mesh.Table.Or(active[i], network.Of(c.When)))];
            if (next.SequenceEqual(active))
                break;
            active = next;
        }
        return active;
    }
}
