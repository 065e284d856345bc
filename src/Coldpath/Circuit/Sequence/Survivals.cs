using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>How nets stay live with given acts done, told with as many usual values as may be.</summary>
/// <param name="netlist">The panel.</param>
/// <param name="acts">All that can be done.</param>
/// <param name="panel">The panel with the given acts done.</param>
/// <param name="usual">Values that a reader expects, one for each variable of the netlist; null: any will do.</param>
internal sealed class Survivals(
    Netlist netlist,
    IReadOnlyList<IsolationAct> acts,
    SwitchedPanel panel,
    IReadOnlyList<int>? usual
)
{
    private readonly Dictionary<string, string> expected = new(
        netlist
            .Variables.Index()
            .Where(v => usual is not null && !Freedom.StaysWhole(v.Item))
            .Select(v => KeyValuePair.Create(v.Item.Name, v.Item.Values[usual![v.Index]]))
    );

    private DiagramTable Table => panel.Space.Table;

    /// <summary>Null when none of the nets can be live.</summary>
    public Survival? Of(IReadOnlyCollection<string> nets)
    {
        if (panel.Space.First(Nearest(panel.Live(nets))) is not { } state)
            return null;
        var values = panel.Values(state);
        Revert(nets, values, [.. netlist.Variables.Select(v => v.Name).Where(n => IsUnusual(n, values))]);
        return new(
            new State(
                netlist.Variables.Select(v => v.Values.Index().First(p => p.Item == values[v.Name]).Index)
            ),
            [.. acts.Where(a => values[Switches.Of(a)] == Switches.Yes).Select(a => a.Name)]
        );
    }

    private bool IsUnusual(string variable, Dictionary<string, string> values) =>
        expected.TryGetValue(variable, out var value) && values[variable] != value;

    private Diagram Nearest(Diagram live)
    {
        foreach (var variable in panel.Space.Variables.Where(v => expected.ContainsKey(v.Name)))
        {
            var nearer = Table.And(live, panel.Space.Is(variable.Name, expected[variable.Name]));
            live = nearer.IsFalse ? live : nearer;
        }
        return live;
    }

    /// <summary>
    /// Sets variables back to their usual values, the first first, where a net stays live with it: all at once if that
    /// does, else each half.
    /// </summary>
    private void Revert(IEnumerable<string> nets, Dictionary<string, string> values, string[] unusual)
    {
        if (unusual.Length == 0)
            return;
        var before = unusual.Select(v => values[v]).ToArray();
        foreach (var variable in unusual)
            values[variable] = expected[variable];
        if (panel.IsLive(nets, values))
            return;
        foreach (var (variable, value) in unusual.Zip(before))
            values[variable] = value;
        if (unusual.Length == 1)
            return;
        Revert(nets, values, unusual[..(unusual.Length / 2)]);
        Revert(nets, values, unusual[(unusual.Length / 2)..]);
    }
}
