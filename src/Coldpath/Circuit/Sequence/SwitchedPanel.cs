using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// A panel with <see cref="Switches"/> in which everything else is free, but for the failures of coils, wiring and controls,
/// and stands at its worst as far as that is plain.
/// </summary>
internal sealed class SwitchedPanel
{
    private readonly Netlist switched;
    private readonly AtWorst worst;

    /// <param name="netlist">The panel.</param>
    /// <param name="acts">All that can be done.</param>
    /// <param name="done">What is done: the other acts are then as free as all else. Null: each is asked about.</param>
    /// <param name="table">Where the diagrams live.</param>
    /// <param name="breaking">Which conductor is broken is asked about.</param>
    public SwitchedPanel(
        Netlist netlist,
        IReadOnlyList<IsolationAct> acts,
        IReadOnlyCollection<IsolationAct>? done,
        DiagramTable table,
        bool breaking = false
    )
    {
        switched = Switches.PutIn(netlist, acts, breaking);
        var kept = breaking ? new HashSet<string> { Switches.Broken } : [];
        if (done is null)
            kept.UnionWith(acts.Select(Switches.Of));
        worst = new(switched, kept, Given(netlist, done ?? []));
        Space = new(worst.Netlist, table, SweepOrder.Of(worst.Netlist));
        Network = new(worst.Netlist, Space);
    }

    public StateSpace Space { get; }

    public Network Network { get; }

    /// <summary>Some of the nets are live.</summary>
    public Diagram Live(IEnumerable<string> nets) => Space.Table.And(Network.Live(nets), Space.Domain);

    /// <summary>The level of the switch of an act that is asked about.</summary>
    public int LevelOf(IsolationAct act) => Space.LevelsOf(Space.IndexOf(Switches.Of(act)))[0];

    /// <summary>This conductor is broken, all others whole; only where breaking was asked for.</summary>
    public Diagram IsBroken(string conductor) => Space.Is(Switches.Broken, conductor);

    /// <summary>One state of the panel and its switches, by names: those at their worst and the rest as in the state.</summary>
    public Dictionary<string, string> Values(State state) =>
        new(
            Space
                .Variables.Select((v, i) => KeyValuePair.Create(v.Name, v.Values[state[i]]))
                .Concat(worst.Values)
        );

    /// <summary>Some of the nets are live in this one state of all variables.</summary>
    public bool IsLive(IEnumerable<string> nets, IReadOnlyDictionary<string, string> values)
    {
        var decided = switched.At(values) with { Variables = [] };
        var network = new Network(decided, new StateSpace(decided));
        return nets.Any(net => network.Live(net).IsTrue);
    }

    private static Dictionary<string, string> Given(Netlist netlist, IEnumerable<IsolationAct> done)
    {
        var given = netlist.Variables.Where(Freedom.StaysWhole).ToDictionary(v => v.Name, v => v.Rest);
        foreach (var act in done)
            given.Add(Switches.Of(act), Switches.Yes);
        return given;
    }
}
