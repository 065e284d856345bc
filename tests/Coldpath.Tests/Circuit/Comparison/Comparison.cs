using System.Text.Json;
using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Engine against interpreter on one panel, item by item and state by state.</summary>
internal sealed class Comparison
{
    private readonly Behaviour panel;
    private readonly Network network;
    private readonly JsonElement table;
    private readonly Bits bits;
    private readonly List<string> differences = [];

    private Comparison(Behaviour panel, JsonElement table)
    {
        this.panel = panel;
        network = panel.Network;
        bits = new Bits(panel.Space);
        this.table = table;
    }

    /// <summary>One line for each item that differs.</summary>
    public static IReadOnlyList<string> Differences(Behaviour panel, JsonElement table)
    {
        var comparison = new Comparison(panel, table);
        comparison.CompareAll();
        return comparison.differences;
    }

    private void CompareAll()
    {
        CompareNetwork();
        CompareLoads();
        CompareMoves();
        CompareSettling();
    }

    private void CompareNetwork()
    {
        foreach (var net in panel.Netlist.Nets)
        {
            Compare($"live {net}", network.Live(net), table.GetProperty("live").GetProperty(net));
            Compare(
                $"earth-tied {net}",
                network.EarthTied(net),
                table.GetProperty("earthTied").GetProperty(net)
            );
        }
        foreach (var supply in table.GetProperty("short").EnumerateObject())
            Compare($"short {supply.Name}", network.Short(supply.Name), supply.Value);
        Compare("any short", network.AnyShort(), table.GetProperty("shortAny"));
    }

    private void CompareLoads()
    {
        foreach (var load in panel.Netlist.Loads.Select(l => l.Name))
        {
            var theirs = table.GetProperty("runs").GetProperty(load);
            Compare($"{load} forward", network.Runs(load, Turning.Forward), theirs.GetProperty("forward"));
            Compare($"{load} reverse", network.Runs(load, Turning.Reverse), theirs.GetProperty("reverse"));
            Compare($"{load} runs", network.Runs(load), theirs.GetProperty("any"));
            Compare($"{load} abnormal", network.Abnormal(load), theirs.GetProperty("singlePhasing"));
            Compare($"{load} stands live", network.StandsLive(load), theirs.GetProperty("standsLive"));
        }
    }

    private void CompareMoves()
    {
        var constraints = panel.Constrained;
        Compare("allowed", constraints, table.GetProperty("allowed"));
        var declared = panel.Transitions.Where(t => t.Cause != Cause.Short).GetEnumerator();
        foreach (var (v, variable) in panel.Netlist.Variables.Index())
        foreach (var (m, move) in variable.Moves.Index())
        {
            var name = $"{variable.Name} {move.From} to {move.To} by {move.By}";
            var raw = table.GetProperty("raw")[v][m];
            Compare($"{name}: when", network.Of(move.When), raw.GetProperty("when"));
            Compare($"{name}: may", network.Of(move.May), raw.GetProperty("may"));
            declared.MoveNext();
            var made = table.GetProperty("moves")[v][m];
            Compare($"{name}: certain", declared.Current.Certain, made.GetProperty("certain"));
            Compare($"{name}: optional", Optional(declared.Current), made.GetProperty("optional"));
        }
        foreach (var opening in table.GetProperty("shortMoves").EnumerateArray())
            CompareOpening(opening);
        Compare(
            "blocked",
            panel.Table.AnyOf(panel.Transitions.Select(t => t.Blocked)),
            table.GetProperty("blocked")
        );
    }

    private void CompareOpening(JsonElement opening)
    {
        var device = opening.GetProperty("device").GetString();
        var variable = opening.GetProperty("variable").GetString()!;
        var to = panel.Space.IndexOfValue(variable, opening.GetProperty("to").GetString()!);
        var index = panel.Space.IndexOf(variable);
        var mine = panel
            .Transitions.Where(t => t.Cause == Cause.Short && t.Variable == index && t.To == to)
            .ToArray();
        Compare(
            $"{device}: {variable} opens, certain",
            panel.Table.AnyOf(mine.Select(t => t.Certain)),
            opening.GetProperty("certain")
        );
        Compare(
            $"{device}: {variable} opens, optional",
            panel.Table.AnyOf(mine.Select(Optional)),
            opening.GetProperty("optional")
        );
    }

    private Diagram Optional(Transition transition) =>
        panel.Table.Or(transition.Uncertain, transition.Shorted);

    private void CompareSettling()
    {
        var settling = panel.Settling;
        Compare("settled", settling.Settled, table.GetProperty("settled"));
        Compare("steady", settling.Steady, table.GetProperty("steady"));
        Compare("chatter", settling.Chatter, table.GetProperty("chatter"));
        Compare("race", settling.Race, table.GetProperty("race"));
        Compare("lasting short", panel.LastingShort, table.GetProperty("shortLasts"));
        Compare("reachable", panel.Reachable, table.GetProperty("reachable"));
        Compare("reachable settled", panel.ReachableSettled, table.GetProperty("reachableSettled"));
        var powered = table.GetProperty("powered").GetInt32();
        if (bits.IndexOf(panel.Powered) != powered)
            differences.Add($"powered: {Told(bits.IndexOf(panel.Powered))}, interpreter {Told(powered)}");
    }

    private void Compare(string item, Diagram mine, JsonElement theirs)
    {
        var at = bits.FirstDifference(mine, theirs);
        if (at >= 0)
            differences.Add($"{item}: engine says {panel.Space.Holds(mine, bits[at])} at {Told(at)}");
    }

    private string Told(int index)
    {
        var state = bits[index];
        return string.Join(" ", panel.Netlist.Variables.Select((v, i) => $"{v.Name}={v.Values[state[i]]}"));
    }
}
