using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Control;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>Where each terminal is drawn, in words for a reference on a power sheet.</summary>
/// <param name="powerSheet">The power sheet of each terminal, by number.</param>
/// <param name="controlSheet">The control sheet of each terminal, by number.</param>
/// <param name="rung">The rung of each terminal.</param>
/// <param name="nodes">The control sheet of each node and the rung that names it first.</param>
/// <param name="severalSheets">Whether a sheet has to be named.</param>
internal sealed class SheetMap(
    IReadOnlyDictionary<Terminal, int> powerSheet,
    IReadOnlyDictionary<Terminal, int> controlSheet,
    IReadOnlyDictionary<Terminal, string> rung,
    IReadOnlyDictionary<string, (int Sheet, string Rung)> nodes,
    bool severalSheets
)
{
    /// <param name="terminal">Null for where a rung names the net or touches a terminal of the power sheet.</param>
    public string Of(PanelNet net, Terminal? terminal) => terminal is { } one ? Of(one) : InRungs(net);

    private string Of(Terminal terminal) =>
        severalSheets && SheetOf(terminal) is { } sheet ? $"sheet {sheet}"
        : rung.TryGetValue(terminal, out var number) ? $"rung {number}"
        : "not wired";

    /// <summary>The power sheet that shows a terminal; null when none does.</summary>
    public int? PowerSheetOf(Terminal terminal) =>
        powerSheet.TryGetValue(terminal, out var sheet) ? sheet : null;

    private string InRungs(PanelNet net)
    {
        var places = net.Names.Where(nodes.ContainsKey).Select(n => nodes[n]);
        var touched = net
            .Terminals.Where(rung.ContainsKey)
            .Select(t => (Sheet: controlSheet[t], Rung: rung[t]));
        var (sheet, number) = places.Concat(touched).First();
        return severalSheets ? $"sheet {sheet}" : $"rung {number}";
    }

    private int? SheetOf(Terminal terminal) =>
        powerSheet.TryGetValue(terminal, out var power) ? power
        : controlSheet.TryGetValue(terminal, out var control) ? control
        : null;

    /// <param name="units">Those on each power sheet, which come first.</param>
    /// <param name="pages">Blocks on each control sheet after them.</param>
    public static SheetMap Of(
        IReadOnlyList<IReadOnlyList<Unit>> units,
        IReadOnlyList<IReadOnlyList<LadderBlock>> pages,
        bool severalSheets
    )
    {
        var power = new Dictionary<Terminal, int>();
        for (var i = 0; i < units.Count; i++)
            foreach (var unit in units[i])
            foreach (var terminal in unit.Terminals)
                power[new(unit.Device.Tag, terminal)] = i + 1;
        var control = new Dictionary<Terminal, int>();
        var rungs = new Dictionary<Terminal, string>();
        var nodes = new Dictionary<string, (int, string)>(StringComparer.Ordinal);
        for (var i = 0; i < pages.Count; i++)
            foreach (var rung in pages[i].SelectMany(b => b.Rungs))
            {
                foreach (var node in rung.Leaves.OfType<RungNode>())
                    nodes.TryAdd(node.Name, (units.Count + i + 1, rung.Number));
                foreach (var terminal in rung.Leaves.OfType<RungPart>().SelectMany(p => p.Terminals))
                {
                    control.TryAdd(terminal, units.Count + i + 1);
                    if (!rung.IsApart)
                        rungs.TryAdd(terminal, rung.Number);
                }
            }
        return new(power, control, rungs, nodes, severalSheets);
    }
}
