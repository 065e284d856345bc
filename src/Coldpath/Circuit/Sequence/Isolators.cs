using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// What can be done at a panel to make parts of it dead, for all targets: a copy in which each isolating device has a
/// switch that takes its poles out and each stored source one that takes its charge.
/// </summary>
public sealed class Isolators
{
    private readonly Netlist netlist;
    private readonly IsolationAct[] acts;
    private readonly int[] levels;
    private readonly SwitchedPanel panel;
    private readonly Lazy<SwitchedPanel> breaking;

    public Isolators(Netlist netlist, DiagramTable table)
    {
        this.netlist = netlist;
        acts = [.. ActsOf(netlist)];
        panel = new(netlist, acts, table, breaking: false);
        breaking = new(() => new(netlist, acts, table, breaking: true));
        levels = [.. acts.Select(panel.LevelOf)];
    }

    /// <summary>
    /// Values that a reader expects, one for each variable of the netlist; how something stays live is told with as many
    /// of them, from the first on, as it can be. Null: any will do.
    /// </summary>
    public IReadOnlyList<int>? Usual { get; init; }

    /// <summary>Isolating devices, then stored sources, in declared order.</summary>
    public IReadOnlyList<IsolationAct> Acts => acts;

    internal DiagramTable Table => panel.Space.Table;

    /// <summary>The switches' levels.</summary>
    internal IReadOnlyCollection<int> Levels => levels;

    /// <summary>How the net can be live with these acts done and perhaps further ones; null when it cannot.</summary>
    public Survival? StaysLive(string net, IEnumerable<string> done) => Survival(Live(net), done);

    /// <summary>
    /// The conductors that the nets are dead only by: with these acts done, and perhaps further ones, the breaking of
    /// the one conductor makes something live. Asked of nets that are dead while all is whole.
    /// </summary>
    public IReadOnlyList<string> OnlyWhileWhole(IEnumerable<string> nets, IEnumerable<string> done)
    {
        var (with, table) = (breaking.Value, Table);
        var live = table.AnyOf(nets.Select(with.Network.Live));
        var survivals = table.AllOf([live, Freedom.Of(with.Space), .. Named(done).Select(with.IsDone)]);
        return [.. SwitchedPanel.Conductors(netlist).Where(c => table.Meet(survivals, with.IsBroken(c)))];
    }

    internal Diagram Live(string net) => panel.Network.Live(net);

    /// <summary>The sets of acts after which the condition can still hold.</summary>
    internal Diagram Possible(Diagram condition) =>
        Table.AndExists(
            condition,
            Freedom.Of(panel.Space),
            panel.Space.Bits(Enumerable.Range(0, netlist.Variables.Count))
        );

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

    internal Diagram Exactly(IEnumerable<string> done)
    {
        var chosen = Named(done).ToHashSet();
        return Table.Cube(acts.Zip(levels, (act, level) => KeyValuePair.Create(level, chosen.Contains(act))));
    }

    internal IReadOnlyList<IsolationAct> At(IEnumerable<int> set)
    {
        var chosen = set.ToHashSet();
        return [.. acts.Where((_, i) => chosen.Contains(levels[i]))];
    }

    internal IsolationAct At(int level) => acts[Array.IndexOf(levels, level)];

    internal Survival? Survival(Diagram live, IEnumerable<string> done)
    {
        var survivals = Table.AllOf([live, Freedom.Of(panel.Space), .. Named(done).Select(panel.IsDone)]);
        if (panel.Space.First(Nearest(survivals)) is not { } state)
            return null;
        var all = acts.Where(a => panel.Space.Holds(panel.IsDone(a), state)).Select(a => a.Name);
        return new(new State(state.Values.Take(netlist.Variables.Count)), [.. all]);
    }

    private Diagram Nearest(Diagram survivals)
    {
        foreach (var (variable, value) in (Usual ?? []).Index())
        {
            var nearer = Table.And(survivals, panel.Space.Is(variable, value));
            survivals = nearer.IsFalse ? survivals : nearer;
        }
        return survivals;
    }

    private IEnumerable<IsolationAct> Named(IEnumerable<string> names) =>
        names.Select(name =>
            acts.FirstOrDefault(a => a.Name == name)
            ?? throw new ArgumentException($"{name} is no isolating device", nameof(names))
        );

    private static IEnumerable<IsolationAct> ActsOf(Netlist netlist)
    {
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));
        return netlist
            .Devices.Where(d => d.Isolates is { Elements.Count: > 0 })
            .Select(d => new IsolationAct(d.Tag, d, null))
            .Concat(
                supplies.Where(s => s.Store is not null).Select(s => new IsolationAct(s.Name, null, s.Store))
            );
    }
}
