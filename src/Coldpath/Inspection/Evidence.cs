using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Findings;
using Coldpath.Panels;
using Coldpath.Standards;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>
/// All that a check may look at: the bound panel, its netlist, what it can do. Facts that several checks ask for are
/// worked out once, each in a class of its own.
/// </summary>
public sealed class Evidence
{
    private readonly CancellationToken stop;
    private readonly Lazy<Ways> ways;
    private readonly Lazy<Interlocks> interlocks;
    private readonly Lazy<Sections> sections;
    private readonly Lazy<Protections> protections;
    private readonly Lazy<SingleFailures> singleFailures;
    private readonly Lazy<HiddenFailures> hiddenFailures;
    private readonly Lazy<IReadOnlyList<JudgedIntent>> intents;
    private readonly Lazy<Network> wholeNetwork;
    private readonly Lazy<Diagram> allSupplied;
    private readonly Lazy<Diagram> intact;
    private readonly HashSet<string> presences;
    private readonly FailureSearches searches;

    /// <param name="source">The description.</param>
    /// <param name="panel">What it says.</param>
    /// <param name="whole">Its netlist, failures included.</param>
    /// <param name="behaviour">Of the same netlist without failures.</param>
    /// <param name="failures">How many failures the checks that ask for failures reckon with: 0 to 2.</param>
    /// <param name="stop">Ends searches early.</param>
    public Evidence(
        SourceText source,
        Panel panel,
        Netlist whole,
        Behaviour behaviour,
        int failures = 0,
        CancellationToken stop = default
    )
    {
        Failures = failures;
        Source = source;
        Panel = panel;
        Netlist = behaviour.Netlist;
        Behaviour = behaviour;
        Devices = new DeviceFacts(Netlist, behaviour);
        Words = Vocabulary.For(whole.Rules);
        ways = new(() => new Ways(this));
        interlocks = new(() => new Interlocks(this));
        sections = new(() => new Sections(this));
        protections = new(() => new Protections(this));
        hiddenFailures = new(() => new HiddenFailures(this));
        singleFailures = new(() => new SingleFailures(this));
        intents = new(Judge);
        this.stop = stop;
        searches = new(whole, stop);
        wholeNetwork = new(() => new(whole, new StateSpace(whole)));
        allSupplied = new(() => Table.AllOf(Netlist.Variables.Where(IsPresence).Select(v => Is(v, v.Rest))));
        intact = new(FindIntact);
        presences =
        [
            .. whole.Supplies.SelectMany(s =>
                Guards.Variables(s.Present).Concat(s.Conductors.SelectMany(c => Guards.Variables(c.Present)))
            ),
        ];
    }

    public SourceText Source { get; }
    public Panel Panel { get; }

    /// <summary>The netlist in which nothing fails: what <see cref="Behaviour"/> and <see cref="Network"/> speak of.</summary>
    public Netlist Netlist { get; }
    public Behaviour Behaviour { get; }
    public DeviceFacts Devices { get; }
    public Vocabulary Words { get; }
    public Ways Ways => ways.Value;
    public Interlocks Interlocks => interlocks.Value;
    public Sections Sections => sections.Value;
    public Protections Protections => protections.Value;
    public HiddenFailures HiddenFailures => hiddenFailures.Value;
    public SingleFailures SingleFailures => singleFailures.Value;

    /// <summary>The intent lines and their verdicts, in the order of the text.</summary>
    public IReadOnlyList<JudgedIntent> Intents => intents.Value;

    public DiagramTable Table => Behaviour.Space.Table;
    public Network Network => Behaviour.Network;

    /// <summary>The network with every failure in it, over a state space of its own: for what is free to fail.</summary>
    public Network Whole => wholeNetwork.Value;

    /// <summary>How many failures the checks that ask for failures reckon with.</summary>
    public int Failures { get; }

    /// <summary>Every failure there is, those of coils, controls and control wires too, in declared order.</summary>
    public IReadOnlyList<string> AllFailures => searches.All;

    /// <summary>
    /// What the panel can do while so many of its parts fail, one search for each few parts; together they cover every
    /// combination.
    /// </summary>
    public IEnumerable<Behaviour> Failing(int most) => searches.Failing(most);

    /// <summary>The same for single failures, with their sorts, each search made when first asked for.</summary>
    public IReadOnlyList<FailureSearch> FailingSingly => searches.Single;

    /// <summary>What the panel can do while just these may fail, uncertain coils put to the solver.</summary>
    public Behaviour Judged(IReadOnlyCollection<string> failures) => searches.Judged(failures);

    /// <summary>An empty table for a search of its own, roomy from the start: what is remembered of it grows with its room.</summary>
    /// <param name="nodes">Its budget.</param>
    public DiagramTable BoundedTable(int nodes) => new(nodes, 1 << 20, stop);

    /// <summary>Reachable states, passing ones included.</summary>
    public Diagram Reachable => Behaviour.Reachable;

    /// <summary>Reachable states in which the circuit has settled.</summary>
    public Diagram Settled => Behaviour.ReachableSettled;

    /// <summary>Of those, the ones in which no delay is running out.</summary>
    public Diagram Quiet => Table.And(Settled, Behaviour.Quiet);

    /// <summary>Primary supplies, then converters' outputs; stores left out.</summary>
    public IReadOnlyList<Supply> Supplies =>
        [.. Netlist.Supplies.Concat(Netlist.Converters.Select(c => c.Output)).Where(s => s.Store is null)];

    /// <summary>Sources that hold a charge or turn.</summary>
    public IEnumerable<Supply> Stores =>
        Netlist.Supplies.Concat(Netlist.Converters.Select(c => c.Output)).Where(s => s.Store is not null);

    /// <summary>Loads that the power circuit feeds, lamps and coils left out.</summary>
    public IReadOnlyList<Load> Motors =>
        [.. Netlist.Loads.Where(l => l.Modes.Count > 0 && l.Elements.Any(id => Devices.Element(id).Power))];

    /// <summary>States in which every supply and every conductor of it is there.</summary>
    public Diagram AllSupplied => allSupplied.Value;

    /// <summary>Every supply there, no fuse blown, no breaker tripped by a short.</summary>
    public Diagram Intact => intact.Value;

    /// <summary>Settled states with every supply there and every isolator and breaker as powered.</summary>
    public Diagram PoweredStates =>
        Table.AllOf([
            Settled,
            AllSupplied,
            .. Netlist.Powered.Select(o => Behaviour.Space.Is(o.Variable, o.Value)),
        ]);

    /// <summary>It says whether a supply or one of its conductors is there.</summary>
    public bool IsPresence(Variable variable) => presences.Contains(variable.Name);

    public Diagram Of(Expression condition) => Behaviour.Of(condition);

    public Diagram Is(Variable variable, string value) => Behaviour.Space.Is(variable.Name, value);

    public Diagram Runs(Load load, Turning turns = Turning.Any) => Network.Runs(load.Name, turns);

    /// <summary>Tags as a list for a sentence: "K2", "K2 and K3", "K1, K2 and K3".</summary>
    public static string List(IEnumerable<string> names, string none = "nothing")
    {
        var all = names.Distinct().ToArray();
        return all.Length switch
        {
            0 => none,
            1 => all[0],
            _ => string.Join(", ", all[..^1]) + " and " + all[^1],
        };
    }

    /// <summary>The first few names and how many more there are.</summary>
    public static string Some(IEnumerable<string> names)
    {
        var all = names.Distinct().ToArray();
        return all.Length <= 4 ? List(all) : $"{string.Join(", ", all[..3])} and {all.Length - 3} more";
    }

    /// <summary>States in which the armature wants a move that an interlock forbids.</summary>
    public Diagram Blocked(Variable armature) => Behaviour.Blocked(Behaviour.Space.IndexOf(armature.Name));

    /// <summary>A side of its coil is not wired at all: a finding of its own.</summary>
    public bool HasOpenCoil(Variable armature) =>
        Panel
            .UnconnectedTerminals()
            .Any(t => Netlist.Points.Any(p => p.Name == t.ToString() && armature.Coil.Contains(p.Net)));

    /// <summary>", in passing" when the circuit settles in none of the states.</summary>
    public string Passing(Diagram states) => Table.Meet(states, Settled) ? "" : ", in passing";

    /// <summary>The shortest story to one of the states as sentences; empty when none is reachable.</summary>
    public IReadOnlyList<StoryStep> Tell(Diagram states) =>
        Behaviour.ShortestTo(states) is { } story ? Narration.Tell(story) : [];

    /// <summary>A path as a reader follows it: the supply's conductor, then points and devices to the end.</summary>
    public IReadOnlyList<string> Steps(ConductingPath path) =>
        [$"{path.Supply} {path.Conductor}", .. path.Steps.Select(ElementName)];

    /// <summary>The way of a current, with the direction in each element and what it amounts to.</summary>
    public IReadOnlyList<string> Steps(CurrentPath path) =>
        [
            path.From ?? "?",
            .. path.Steps.Select(s => Directed(s) + (s.Amperes > 0 ? $" ({VoltageWords.Of(s)})" : "")),
            path.To ?? "?",
        ];

    /// <summary>"K1:13-14"; "K1:14-13" when current passes it that way.</summary>
    private string Directed(CurrentStep step)
    {
        if (Devices.TryElement(step.Name) is not { } element)
            return step.Name;
        var name = ElementName(step.Name);
        var ends = name[(name.IndexOf(':', StringComparison.Ordinal) + 1)..];
        var points = Netlist.Points.Where(p => p.Device == element.Device).ToArray();
        foreach (var a in points.Where(p => p.Net == step.From))
        foreach (var b in points.Where(p => p.Net == step.To))
            if (ends == $"{Marking(b)}-{Marking(a)}")
                return $"{element.Device}:{Marking(a)}-{Marking(b)}";
        return name;

        string Marking(Point point) => point.Name[(element.Device.Length + 1)..];
    }

    /// <summary>"Q1:1/L1-2/T1" for an element of a device; a coupling keeps its name.</summary>
    public string ElementName(string id) =>
        Devices.TryElement(id) is { Device.Length: > 0 } element
        && id.StartsWith(element.Device + ".", StringComparison.Ordinal)
            ? $"{element.Device}:{id[(element.Device.Length + 1)..]}"
            : id;

    /// <summary>The declaration of the first of the devices that has one; the panel's own place when none has.</summary>
    public Span PlaceOf(IEnumerable<string> devices) =>
        devices.Select(Panel.SpanOf).FirstOrDefault(span => span is not null) ?? new(Source, 0, 0);

    /// <summary>Begins a finding of the check about the devices; the first is the culprit that carries the place.</summary>
    public Report Report(Check check, IEnumerable<string> devices) =>
        new(this, check.Card, [.. devices.Distinct()]);

    private Diagram FindIntact() =>
        Table.And(
            AllSupplied,
            Table.AllOf(
                Netlist
                    .Devices.SelectMany(d => d.OpensOnShort)
                    .Select(o => !Behaviour.Space.Is(o.Variable, o.To))
            )
        );

    private Span SpanAt(IReadOnlyList<int> place) =>
        new(Source, Source.Offset(place[0], place[1]), Source.Offset(place[2], place[3]));

    private List<string> DevicesOf(Intent intent)
    {
        var named = Guards.Names(intent.When).Concat(intent.By.Select(o => o.Variable)).ToHashSet();
        var netlist = Whole.Netlist;
        IEnumerable<string?> devices =
        [
            intent.Of,
            .. intent.Via,
            .. netlist.Variables.Where(v => named.Contains(v.Name)).Select(v => v.Device),
            .. netlist.Elements.Where(e => named.Contains(e.Id)).Select(e => e.Device),
            .. netlist
                .Loads.Where(l => named.Contains(l.Name))
                .Select(l => Devices.Element(l.Elements[0]).Device),
            .. netlist.Points.Where(p => named.Contains(p.Net)).Select(p => p.Device).Take(1),
            .. named,
        ];
        return [.. devices.OfType<string>().Where(Devices.Known).Distinct()];
    }

    private JudgedIntent Judge(Questions questions, Intent intent, Intent whole) =>
        new(intent, SpanAt(intent.Span), Answer(questions, intent, whole)) { Devices = DevicesOf(whole) };

    /// <summary>"dead" is asked of the panel whose parts may fail, all else of the one whose parts do so far as the line says.</summary>
    private Verdict Answer(Questions questions, Intent intent, Intent whole) =>
        intent.Form == IntentForm.Dead ? questions.Answer(whole)
        : intent.Failures == 0 ? questions.Answer(intent)
        : searches.Answer(whole);

    private JudgedIntent[] Judge()
    {
        var questions = new Questions(Behaviour, Whole);
        return
        [
            .. Netlist
                .Intents.Zip(Whole.Netlist.Intents)
                .Select(pair => Judge(questions, pair.First, pair.Second)),
        ];
    }
}
