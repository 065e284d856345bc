using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>A whole drawing of a panel's text, and what is wrong with it.</summary>
internal sealed record Drawn(Panel Panel, Drawing Drawing)
{
    public static Drawn Of(string text, int lines, string paper, Shown? shown = null)
    {
        var bound = PanelBinder.Bind(
            PanelParser.Parse(new SourceText("test.panel", text)),
            KindLibrary.Standard
        );
        var request = new DrawRequest(lines, Paper.Find(paper)!);
        return new(bound.Panel, Drafting.Draw(bound.Panel, bound.Netlist, request, shown ?? Shown.Wiring));
    }

    public IEnumerable<Figure> Figures => Drawing.Sheets.SelectMany(s => s.Figures);

    /// <param name="oneLine">Several nets are one line, so that wires are not looked up by net.</param>
    public IReadOnlyList<string> Faults(bool oneLine) =>
        [
            .. Drawing.Sheets.SelectMany(Quality.Faults),
            .. oneLine ? [] : Quality.Parted(Drawing.Sheets, NetOf(), IsBar),
            .. Miscounted(),
            .. Absent(),
            .. Unwired(),
        ];

    private bool IsBar(string tag) =>
        Panel.Find(tag) is { } device
        && device.Blueprint.LineSide.Intersect(device.Blueprint.LoadSide).Any()
        && device.Blueprint.Network.Elements.Count == 0;

    /// <summary>Terminals that are not drawn exactly once.</summary>
    private IEnumerable<string> Miscounted()
    {
        var drawn = Quality.Terminals(Drawing.Sheets);
        var wanted = Panel
            .Devices.SelectMany(d => d.Terminals.Select(t => $"{d.Tag}:{t}"))
            .ToHashSet(StringComparer.Ordinal);
        return wanted
            .Where(t => drawn.GetValueOrDefault(t) != 1)
            .Select(t => $"{t} is drawn {drawn.GetValueOrDefault(t)} times")
            .Concat(drawn.Keys.Where(t => !wanted.Contains(t)).Select(t => $"{t} is drawn and is not there"));
    }

    /// <summary>Devices that nothing on paper names.</summary>
    private IEnumerable<string> Absent()
    {
        var named = Figures.Select(f => f.Device).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return Panel.Devices.Where(d => !named.Contains(d.Tag)).Select(d => $"{d.Tag} is not drawn");
    }

    /// <summary>Terminals of a net of several that no wire or reference of the drawing lists.</summary>
    private IEnumerable<string> Unwired()
    {
        var listed = Figures
            .Where(f => f.Kind == FigureKind.Wire)
            .SelectMany(f => f.Terminals)
            .ToHashSet(StringComparer.Ordinal);
        return Panel
            .Nets.Where(n => n.Terminals.Count > 1)
            .SelectMany(n => n.Terminals.Select(t => t.ToString()))
            .Where(t => !listed.Contains(t))
            .Select(t => $"no wire leads to {t}");
    }

    private Func<string, string?> NetOf()
    {
        var nets = Panel
            .Nets.Where(n => n.Terminals.Count > 1)
            .SelectMany(n => n.Terminals.Select(t => (t.ToString(), n.Name)))
            .ToDictionary();
        return terminal => nets.GetValueOrDefault(terminal);
    }
}
