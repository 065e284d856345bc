using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Control;

namespace Coldpath.Tests.Sheets.Drawings.Control;

/// <summary>A panel's ladder on sheets of its own, and what is wrong with it.</summary>
internal sealed record DrawnLadder(
    Panel Panel,
    Division Division,
    Ladder Ladder,
    IReadOnlyList<PlacedSheet> Sheets
)
{
    /// <param name="width">Of the ladder; infinite for one sheet without bounds.</param>
    /// <param name="height">Of a page.</param>
    public static DrawnLadder Of(
        string text,
        double width = double.PositiveInfinity,
        double height = double.PositiveInfinity,
        Shown? shown = null
    )
    {
        var bound = PanelBinder.Bind(
            PanelParser.Parse(new SourceText("test.panel", text)),
            KindLibrary.Standard
        );
        var division = Division.Of(bound.Panel);
        var ladder = LadderLayout.Of(
            bound.Panel,
            bound.Netlist,
            division,
            shown ?? Shown.Wiring,
            width,
            height
        );
        var pages = ladder.Paged(height).Select((blocks, i) => (Sheet: i + 2, Blocks: blocks)).ToList();
        var sheets = ladder
            .Assemble(pages, _ => 1)
            .Zip(pages)
            .Select(p => new PlacedSheet(
                p.Second.Sheet,
                "control",
                ladder.Width,
                Math.Max(height is double.PositiveInfinity ? 0 : height, ladder.HeightOf(p.Second.Blocks)),
                p.First
            ));
        return new(bound.Panel, division, ladder, [.. sheets]);
    }

    public IEnumerable<Figure> Figures => Sheets.SelectMany(s => s.Figures);

    public IReadOnlyList<string> Faults() =>
        [
            .. Sheets.SelectMany(Quality.Faults),
            .. Quality.Parted(Sheets, NetOf()),
            .. Quality.Unlisted(Sheets, NetOf()),
            .. Missing(),
            .. Forgotten(),
        ];

    /// <summary>Terminals that are not drawn exactly once.</summary>
    public IEnumerable<string> Missing()
    {
        var drawn = Quality.Terminals(Sheets);
        var expected = Expected();
        return expected
            .Where(t => drawn.GetValueOrDefault(t) != 1)
            .Select(t => $"{t} is drawn {drawn.GetValueOrDefault(t)} times")
            .Concat(drawn.Keys.Except(expected).Select(t => $"{t} is not of the control sheet"));
    }

    /// <summary>Devices that neither this nor the power sheet shows.</summary>
    private IEnumerable<string> Forgotten() =>
        Panel
            .Devices.Select(d => d.Tag)
            .Except(Figures.Select(f => f.Device).OfType<string>())
            .Except(Division.Units.Select(u => u.Device.Tag))
            .Select(t => $"{t} is drawn nowhere");

    /// <summary>What rungs pass, what they touch and the power sheet does not show, and what stands apart.</summary>
    private HashSet<string> Expected()
    {
        var onPower = Division
            .Units.SelectMany(u => u.Terminals.Select(t => new Terminal(u.Device.Tag, t)))
            .ToHashSet();
        var expected = new HashSet<string>();
        foreach (var passage in Division.Rungs.SelectMany(c => c.Passages))
            for (var i = 0; i < Math.Max(passage.Left.Count, passage.Right.Count); i++)
            {
                var (left, right) = (passage.Left.ElementAtOrDefault(i), passage.Right.ElementAtOrDefault(i));
                var through = left is not null && right is not null && left != right;
                foreach (var name in new[] { left, right }.OfType<string>())
                    if (through || !onPower.Contains(new(passage.Device, name)))
                        expected.Add($"{passage.Device}:{name}");
            }
        foreach (var part in Division.Apart)
        foreach (var name in new[] { part.Left, part.Right }.OfType<string>())
            expected.Add($"{part.Device.Tag}:{name}");
        return expected;
    }

    private Func<string, string?> NetOf()
    {
        var nets = Panel
            .Nets.Where(n => n.Terminals.Count > 1)
            .SelectMany(n => n.Terminals.Select(t => (Name: t.ToString(), Net: n.Name)))
            .GroupBy(t => t.Name)
            .ToDictionary(g => g.Key, g => g.First().Net);
        return nets.GetValueOrDefault;
    }
}
