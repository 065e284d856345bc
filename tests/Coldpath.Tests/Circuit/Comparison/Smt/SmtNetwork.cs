using System.Numerics;
using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>
/// A third reading of the definitions: what the conductors that are there make of the closed graph. Not for panels with
/// diodes, grade loose or cycles through several supplies.
/// </summary>
internal sealed class SmtNetwork
{
    private const double Close = 1e-9;

    private readonly SmtText text;
    private readonly SmtGraph graph;
    private readonly IReadOnlyList<SmtConductor> conductors;
    private readonly Lazy<Dictionary<string, string>> live;
    private readonly Dictionary<(string Supply, bool Solid), Dictionary<string, string>[]> cuts = [];

    public SmtNetwork(SmtText text, SmtGraph graph, IReadOnlyList<SmtConductor> conductors)
    {
        this.text = text;
        this.graph = graph;
        this.conductors = conductors;
        live = new(FindLive);
    }

    private Netlist Netlist => graph.Netlist;

    /// <summary>Supplies that are no store, with their conductors.</summary>
    private IEnumerable<IGrouping<string, SmtConductor>> Working =>
        conductors.Where(c => !c.Stored).GroupBy(c => c.Supply);

    /// <summary>A condition of a move, a converter or a question.</summary>
    public string Of(Expression condition, SmtVariables variables) =>
        condition switch
        {
            Not n => Not(Of(n.Term, variables)),
            All a => text.Name(And(a.Terms.Select(t => Of(t, variables)))),
            Any a => text.Name(Or(a.Terms.Select(t => Of(t, variables)))),
            Energised { Grade: Grade.Solid } e => Energised(e),
            Joined j => graph.Joined(j.A, j.B),
            Closed c => graph.Closed[c.Element],
            Carries c => Carries(Netlist.Elements.Single(e => e.Id == c.Element)),
            Live l => live.Value[l.Net],
            Runs r => Runs(Netlist.Loads.Single(l => l.Name == r.Load), r.Turns),
            _ => variables.Guard(condition),
        };

    /// <summary>
    /// Two conductors of different voltage of the supply meet in one solid component, or it meets another supply, that is
    /// not synchronised with it, at two.
    /// </summary>
    public string Shorted(string supply)
    {
        var own = Pairs(Working.Where(s => s.Key == supply))
            .Select(c => And(c.P.Present, c.Q.Present, graph.Joined(c.P.Net, c.Q.Net)));
        var crossed =
            from one in Working
            from other in Working
            where one.Key == supply && one.First().Group != other.First().Group
            select MeetTwice(one, other);
        return text.Name(Or(own.Concat(crossed)));
    }

    public string AnyShorted => text.Name(Or(Working.Select(s => Shorted(s.Key))));

    /// <summary>Two synchronised supplies meet at two solid components: whether that is a short is not decided here.</summary>
    public string Undecided =>
        text.Name(
            Or(
                from one in Working
                from other in Working
                where
                    string.CompareOrdinal(one.Key, other.Key) < 0 && one.First().Group == other.First().Group
                select MeetTwice(one, other)
            )
        );

    /// <summary>
    /// The solid element lies on a cycle through a supply: its conductors all differ in voltage, and other supplies are not
    /// synchronised with it, so that no such cycle sums to zero.
    /// </summary>
    public string CarriesShort(Element element) =>
        text.Name(Or(Working.Select(s => InBlock(element, s.Key, solid: true))));

    /// <summary>By closed elements of all kinds; a load not when its ends are one.</summary>
    private string Carries(Element element)
    {
        var apart = element.Type == ElementType.Load ? Not(graph.Joined(element.A, element.B)) : "true";
        return text.Name(
            And(
                graph.Closed[element.Id],
                apart,
                Or(Working.Select(s => InBlock(element, s.Key, solid: false)))
            )
        );
    }

    private string MeetTwice(IEnumerable<SmtConductor> one, IEnumerable<SmtConductor> other) =>
        text.Name(
            Or(
                from a in one
                from b in one
                where a != b
                from c in other
                from d in other
                where c != d
                select And(Meet(a, c), Meet(b, d), Not(graph.Joined(a.Net, b.Net)))
            )
        );

    private string Meet(SmtConductor one, SmtConductor other) =>
        text.Name(And(one.Present, other.Present, graph.Joined(one.Net, other.Net)));

    private string Energised(Energised e) =>
        text.Name(
            And(
                Not(graph.Joined(e.A, e.B)),
                Or(
                    Pairs(Working)
                        .Where(c => Within(Gap(c.P, c.Q), e.Low, e.High))
                        .SelectMany(c => new[] { Across(c.P, e.A, c.Q, e.B), Across(c.Q, e.A, c.P, e.B) })
                )
            )
        );

    private string Across(SmtConductor p, string a, SmtConductor q, string b) =>
        And(p.Present, q.Present, graph.Joined(p.Net, a), graph.Joined(q.Net, b));

    /// <summary>Each two conductors of one supply that differ in voltage, once.</summary>
    private static IEnumerable<(SmtConductor P, SmtConductor Q)> Pairs(
        IEnumerable<IEnumerable<SmtConductor>> supplies
    ) =>
        from supply in supplies
        from p in supply.Index()
        from q in supply.Skip(p.Index + 1)
        where Gap(p.Item, q) > 0
        select (p.Item, q);

    private static double Gap(SmtConductor p, SmtConductor q)
    {
        var gap = (p.Volts - q.Volts).Magnitude;
        return gap <= Close * Math.Max(p.Volts.Magnitude, q.Volts.Magnitude) ? 0 : gap;
    }

    private static bool Within(double volts, double low, double? high) =>
        volts >= low * (1 - Close) && volts <= (high ?? double.PositiveInfinity) * (1 + Close);

    /// <summary>
    /// Whichever node is taken out, an end of the element still reaches the supply's own node: it lies in one block
    /// with it.
    /// </summary>
    private string InBlock(Element element, string supply, bool solid) =>
        text.Name(
            And(
                graph.Closed[element.Id],
                And(Cuts(supply, solid).Select(reached => Or(reached[element.A], reached[element.B])))
            )
        );

    /// <summary>For each node but the supply's own what that reaches with the node taken out.</summary>
    private Dictionary<string, string>[] Cuts(string supply, bool solid)
    {
        if (cuts.TryGetValue((supply, solid), out var known))
            return known;
        var conducting = graph.Links(e => !solid || SmtGraph.Solid(e), e => graph.Closed[e.Id]);
        SmtLink[] links = [.. conducting, .. Working.SelectMany(Stars)];
        var nodes = Netlist.Nets.Concat(Working.Select(s => Node(s.Key))).ToArray();
        return cuts[(supply, solid)] = [.. nodes.Where(n => n != Node(supply)).Select(gone => From(gone))];

        Dictionary<string, string> From(string gone) =>
            SmtReach.Of(
                text,
                nodes.ToDictionary(n => n, n => n == Node(supply) ? "true" : "false"),
                links.Where(l => l.From != gone && l.To != gone)
            );
    }

    private static IEnumerable<SmtLink> Stars(IGrouping<string, SmtConductor> supply) =>
        supply.SelectMany(c =>
            new SmtLink[] { new(Node(supply.Key), c.Net, c.Present), new(c.Net, Node(supply.Key), c.Present) }
        );

    private static string Node(string supply) => $"supply {supply}";

    /// <summary>In a connection; not for loads behind series elements.</summary>
    private string Runs(Load load, Turning turns) =>
        text.Name(Or(load.Modes.Select(m => And(Connected(m), Fed(m, turns)))));

    private string Connected(LoadMode mode) =>
        And(
            mode.Joined.Select(p => graph.Joined(p.A, p.B))
                .Concat(mode.Apart.Select(p => Not(graph.Joined(p.A, p.B))))
        );

    private string Fed(LoadMode mode, Turning turns) =>
        text.Name(
            Or(
                Working
                    .SelectMany(s => mode.Feed.Count == 3 ? Triangles(s) : Twos(s))
                    .Where(way => turns == Turning.Any || Direction(mode, way.Forward) == turns)
                    .Select(way => Reaches(way.Conductors, mode.Feed))
            )
        );

    private string Reaches(IReadOnlyList<SmtConductor> from, IReadOnlyList<string> feed) =>
        And([
            .. from.Select(c => c.Present),
            .. from.Zip(feed, (c, net) => graph.Joined(c.Net, net)),
            .. from o in Enumerable.Range(0, feed.Count)
            from i in Enumerable.Range(0, o)
            select Not(graph.Joined(feed[i], feed[o])),
        ]);

    private static IEnumerable<(SmtConductor[] Conductors, bool? Forward)> Triangles(
        IEnumerable<SmtConductor> supply
    ) =>
        from p in supply
        from q in supply
        from r in supply
        let sides = new[] { Gap(p, q), Gap(q, r), Gap(r, p) }
        where sides.Min() > 0 && sides.Max() - sides.Min() <= 0.1 * sides.Max() * (1 + Close)
        let turned = (q.Volts - p.Volts) * Complex.Conjugate(r.Volts - p.Volts)
        select (new[] { p, q, r }, (bool?)(turned.Imaginary > 0));

    /// <summary>Direct current turns by polarity, the positive one first; alternating current as the mode says.</summary>
    private static IEnumerable<(SmtConductor[] Conductors, bool? Forward)> Twos(
        IEnumerable<SmtConductor> supply
    ) => from p in supply from q in supply where Gap(p, q) > 0 select (new[] { p, q }, Positive(p, q));

    private static bool? Positive(SmtConductor p, SmtConductor q) =>
        (p.Polarity, q.Polarity) switch
        {
            (Polarity.Plus, Polarity.Minus) => true,
            (Polarity.Minus, Polarity.Plus) => false,
            (Polarity.Alternating, _) or (_, Polarity.Alternating) => null,
            _ => p.Volts.Real > q.Volts.Real,
        };

    private static Turning Direction(LoadMode mode, bool? forward)
    {
        var turns = mode.Turns == Turning.Any && forward is not null ? Turning.Forward : mode.Turns;
        return turns == Turning.Any ? Turning.Any
            : (turns == Turning.Forward) == (forward ?? true) ? Turning.Forward
            : Turning.Reverse;
    }

    private Dictionary<string, string> FindLive()
    {
        var unearthed = Unearthed();
        var contested = SmtReach.Of(
            text,
            Netlist.Nets.ToDictionary(n => n, n => And(unearthed[n], Not(graph.Hard[n]))),
            graph
                .Links(SmtGraph.Bonds, e => graph.Closed[e.Id])
                .Select(l => l with { Open = And(l.Open, Not(graph.Hard[l.From]), Not(graph.Hard[l.To])) })
        );
        var tied = Netlist.Nets.ToDictionary(
            n => n,
            n => text.Name(Or(graph.Hard[n], And(graph.Bonded[n], Not(contested[n]))))
        );
        var reached = SmtReach.Of(
            text,
            unearthed,
            graph.Links(e => SmtGraph.Solid(e) || e.Type == ElementType.Series, e => graph.Closed[e.Id])
        );
        var loose = Loosely(reached, tied);
        return Netlist.Nets.ToDictionary(n => n, n => text.Name(And(Not(tied[n]), Or(reached[n], loose[n]))));
    }

    /// <summary>Where conductors that are not earthed are connected.</summary>
    private Dictionary<string, string> Unearthed() =>
        Netlist.Nets.ToDictionary(
            n => n,
            n => text.Name(Or(conductors.Where(c => c.Net == n).Select(c => And(c.Present, Not(Earthed(c))))))
        );

    /// <summary>Bonded; where two of different voltage are, tied hard.</summary>
    private string Earthed(SmtConductor conductor)
    {
        var supply = conductors.Where(c => c.Supply == conductor.Supply).ToArray();
        var several = Or(Pairs([supply]).Select(c => And(BondedHere(c.P), BondedHere(c.Q))));
        return text.Name(
            And(graph.Bonded[conductor.Net], Or(Not(text.Name(several)), graph.Hard[conductor.Net]))
        );
    }

    private string BondedHere(SmtConductor conductor) => And(conductor.Present, graph.Bonded[conductor.Net]);

    /// <summary>On from there through loads, leakage and couplings, past nothing that is tied to earth.</summary>
    private Dictionary<string, string> Loosely(
        Dictionary<string, string> reached,
        Dictionary<string, string> tied
    )
    {
        var start = Netlist.Nets.ToDictionary(n => n, n => text.Name(And(reached[n], Not(tied[n]))));
        var couplings = Netlist
            .Converters.Select(c => new Coupling(c.Name, c.Windings, FirstDrives: false))
            .Concat(Netlist.Couplings)
            .Where(c => c.Windings.Count > 0)
            .ToArray();
        foreach (var (i, _) in couplings.Index())
            start.Add(Frame(i), "false");
        var links = graph
            .Links(_ => true, e => text.Name(Or(graph.Closed[e.Id], graph.Leaks[e.Id])))
            .Concat(couplings.Index().SelectMany(c => Coupled(c.Item, Frame(c.Index))))
            .Select(l => l with { Open = text.Name(And(l.Open, Untied(l.From), Untied(l.To))) });
        return SmtReach.Of(text, start, links);

        string Untied(string node) => tied.TryGetValue(node, out var at) ? Not(at) : "true";
    }

    private static string Frame(int coupling) => $"coupling {coupling}";

    private static IEnumerable<SmtLink> Coupled(Coupling coupling, string frame)
    {
        var driving = coupling.FirstDrives ? coupling.Windings.Take(1) : coupling.Windings;
        var driven = coupling.FirstDrives ? coupling.Windings.Skip(1) : coupling.Windings;
        return driving
            .SelectMany(w => w)
            .Select(net => new SmtLink(net, frame, "true"))
            .Concat(driven.SelectMany(w => w).Select(net => new SmtLink(frame, net, "true")));
    }
}
