using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>How something stays live.</summary>
/// <param name="State">An assignment of the panel's own variables.</param>
/// <param name="TakenOut">The isolators taken out, those that were given and others.</param>
public sealed record Survival(State State, IReadOnlyList<string> TakenOut);

/// <summary>
/// A copy of a panel in which each isolating device has a switch that takes its poles out, and one further variable
/// says which conductor, if any, is broken. Serves all targets of the panel.
/// </summary>
public sealed class Isolators
{
    private const string None = "none";
    private const string Broken = "broken conductor";

    private readonly Netlist netlist;
    private readonly NetlistDevice[] devices;
    private readonly string[] conductors;
    private readonly StateSpace space;
    private readonly Network network;
    private readonly int[] levels;

    public Isolators(Netlist netlist, DiagramTable table)
    {
        this.netlist = netlist;
        devices = [.. netlist.Devices.Where(d => d.Isolates is { Elements.Count: > 0 })];
        conductors = [.. netlist.Elements.Where(e => e.Type == ElementType.Conductor).Select(e => e.Id)];
        var switched = Switched();
        space = new StateSpace(switched, table);
        network = new Network(switched, space);
        levels = [.. devices.Select(d => space.LevelsOf(space.IndexOf(Switch(d)))[0])];
        Whole = space.Is(Broken, None);
        Free = Table.And(Freedom.Of(space), Whole);
    }

    /// <summary>The isolating devices, in declared order.</summary>
    public IReadOnlyList<NetlistDevice> Devices => devices;

    internal DiagramTable Table => space.Table;

    /// <summary>The switches' levels.</summary>
    internal IReadOnlyCollection<int> Levels => levels;

    /// <summary>What may be, with every conductor whole.</summary>
    internal Diagram Free { get; }

    private Diagram Whole { get; }

    /// <summary>The net can be live with these and perhaps further isolators taken out.</summary>
    public Survival? StaysLive(string net, IEnumerable<string> taken) =>
        FirstSurvival(Table.AllOf(Live(net), Free, AtLeast(taken)));

    /// <summary>
    /// The conductors that the nets are dead only by: with exactly these isolators taken out and the one conductor
    /// broken, something is live that is dead while it is whole.
    /// </summary>
    public IReadOnlyList<string> OnlyWhileWhole(IEnumerable<string> nets, IEnumerable<string> taken)
    {
        var live = Table.AllOf(Table.AnyOf(nets.Select(Live)), Freedom.Of(space), AtLeast(taken));
        return [.. conductors.Where(c => Table.Meet(live, space.Is(Broken, c)))];
    }

    internal Diagram Live(string net) => network.Live(net);

    /// <summary>The sets of switches for which the condition can hold.</summary>
    internal Diagram Possible(Diagram condition)
    {
        var hidden = Enumerable.Range(0, space.Variables.Count).Where(v => !IsSwitch(v));
        return Table.AndExists(condition, Free, space.Bits(hidden));
    }

    /// <summary>The family with all subsets of its sets.</summary>
    internal Diagram WithFewer(Diagram family)
    {
        foreach (var level in levels)
            family = Table.Or(
                family,
                Table.And(Table.Literal(level, false), Table.Restrict(family, level, true))
            );
        return family;
    }

    internal Diagram Only(IEnumerable<string> taken)
    {
        var tags = taken.ToHashSet();
        return Table.Cube(
            devices.Zip(levels, (d, level) => KeyValuePair.Create(level, tags.Contains(d.Tag)))
        );
    }

    internal Diagram AtLeast(IEnumerable<string> taken) =>
        Table.AllOf(taken.Select(tag => space.Is(Switch(Device(tag)), "yes")));

    internal NetlistDevice AtLevel(int level) => devices[Array.IndexOf(levels, level)];

    internal IReadOnlyList<string> Tags(IEnumerable<int> set)
    {
        var chosen = set.ToHashSet();
        return [.. devices.Where((_, i) => chosen.Contains(levels[i])).Select(d => d.Tag)];
    }

    internal Survival? FirstSurvival(Diagram survivals)
    {
        if (space.First(survivals) is not { } state)
            return null;
        var out_ = devices.Where(d => space.Holds(space.Is(Switch(d), "yes"), state)).Select(d => d.Tag);
        return new(new State(state.Values.Take(netlist.Variables.Count)), [.. out_]);
    }

    private bool IsSwitch(int variable) =>
        variable >= netlist.Variables.Count && space.Variables[variable].Name != Broken;

    private NetlistDevice Device(string tag) =>
        devices.FirstOrDefault(d => d.Tag == tag)
        ?? throw new ArgumentException($"{tag} is no isolating device", nameof(tag));

    private Netlist Switched()
    {
        var takenOutBy = devices
            .SelectMany(d => d.Isolates!.Elements.Select(e => (Element: e, Device: d)))
            .ToLookup(p => p.Element, p => p.Device);
        return netlist with
        {
            Variables =
            [
                .. netlist.Variables,
                .. devices.Select(d => Choice(Switch(d), d.Tag, ["no", "yes"])),
                Choice(Broken, "", [None, .. conductors]),
            ],
            Elements = [.. netlist.Elements.Select(e => WithSwitches(e, takenOutBy[e.Id]))],
        };
    }

    private static Element WithSwitches(Element element, IEnumerable<NetlistDevice> takenOutBy)
    {
        var inPlace = takenOutBy.Select(d => (Expression)new VariableIs(Switch(d), "no")).ToList();
        if (element.Type == ElementType.Conductor)
            inPlace.Add(new Not(new VariableIs(Broken, element.Id)));
        return element with { Closed = Expression.AllOf([element.Closed, .. inPlace]) };
    }

    private static Variable Choice(string name, string device, IReadOnlyList<string> values) =>
        new()
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Position,
            Values = values,
            Rest = values[0],
        };

    private static string Switch(NetlistDevice device) => $"{device.Tag} taken out";
}
