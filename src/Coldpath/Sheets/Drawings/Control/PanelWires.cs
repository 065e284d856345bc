using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Nets by terminal and by name.</summary>
internal sealed class PanelWires
{
    private readonly Dictionary<Terminal, PanelNet> byTerminal = [];
    private readonly Dictionary<string, PanelNet> byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> bonded;

    public const string Earth = "PE";

    public PanelWires(Panel panel)
    {
        foreach (var net in panel.Nets)
        {
            foreach (var terminal in net.Terminals)
                byTerminal.TryAdd(terminal, net);
            foreach (var name in net.Names.Append(net.Name))
                byName.TryAdd(name, net);
        }
        bonded = panel.Bonds.Select(b => b.Net).ToHashSet(StringComparer.Ordinal);
    }

    public string NetOf(Terminal terminal) =>
        byTerminal.TryGetValue(terminal, out var net) ? net.Name : terminal.ToString();

    public string NetOf(string node) => byName.TryGetValue(node, out var net) ? net.Name : node;

    /// <summary>Empty for an unknown one.</summary>
    public IReadOnlyList<Terminal> TerminalsOf(string net) =>
        byName.TryGetValue(net, out var found) ? found.Terminals : [];

    /// <summary>Its wire number, node or rail; null when it has none.</summary>
    public string? NameOf(string net) =>
        byName.TryGetValue(net, out var found) && found.Names is [var name, ..] ? name : null;

    /// <summary>A wire leads from it to the earth.</summary>
    public bool IsBonded(string net) => bonded.Contains(net);
}
