using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Control;
using Coldpath.Sheets.Drawings.Pages;
using Coldpath.Sheets.Drawings.Power;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>Draws a panel: power first, then control, on as many sheets as the paper asks for.</summary>
public static class Drafting
{
    private const string PowerName = "power";
    private const string ControlName = "control";

    /// <summary>Between the power and the control circuit on one sheet, in millimetres.</summary>
    private const double Apart = 20;

    /// <param name="netlist">For voltages of rails; null when the panel cannot be searched.</param>
    public static Drawing Draw(Panel panel, Netlist? netlist, DrawRequest request, Shown shown)
    {
        var division = Division.Of(panel);
        var power = new PowerPages(panel, division, request, shown);
        var units = power.Deal();
        var page = SheetSize.Of(request.Paper) is [var first, ..] ? first.Content : (Box?)null;
        var (width, height) = (
            page?.Width ?? double.PositiveInfinity,
            page?.Height ?? double.PositiveInfinity
        );
        var ladder = LadderLayout.Of(panel, netlist, division, shown, width, height);
        var blocks = ladder.Paged(height);
        var several = page is not null && units.Count + blocks.Count > 1;
        var map = SheetMap.Of(units, blocks, several);
        var powerParts = units.Select(u => power.Draw(u, map.Of)).ToList();
        var controlParts = ControlParts(ladder, blocks, several ? units.Count : 0, map);
        var contents = page is null
            ? Together(powerParts, controlParts)
            :
            [
                .. powerParts.Select(p => new Sheetful(PowerName, p)),
                .. controlParts.Select(p => new Sheetful(ControlName, p)),
            ];
        var framing = new Framing(panel, request, shown);
        return new(panel.Name, [.. contents.Select((c, i) => framing.Sheet(c, i + 1, contents.Count))]);
    }

    private static IReadOnlyList<PlacedPart> ControlParts(
        Ladder ladder,
        IReadOnlyList<IReadOnlyList<LadderBlock>> pages,
        int before,
        SheetMap map
    )
    {
        var numbered = pages.Select((b, i) => (before + (before == 0 ? 1 : i + 1), b)).ToList();
        var figures = ladder.Assemble(numbered, t => map.PowerSheetOf(PointOf(t)));
        return [.. figures.Select((f, i) => new PlacedPart(ladder.Width, ladder.HeightOf(pages[i]), f))];
    }

    private static Terminal PointOf(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return new(text[..colon], text[(colon + 1)..]);
    }

    /// <summary>On one sheet the control circuit stands to the right of the power circuit.</summary>
    private static IReadOnlyList<Sheetful> Together(
        IReadOnlyList<PlacedPart> power,
        IReadOnlyList<PlacedPart> control
    )
    {
        var figures = new List<Figure>();
        var (x, height) = (0.0, 0.0);
        foreach (var part in power.Concat(control).Where(p => p.Figures.Count > 0))
        {
            x += x > 0 ? Apart : 0;
            figures.AddRange(part.Figures.Select(f => f.Moved(x, 0)));
            x += part.Width;
            height = Math.Max(height, part.Height);
        }
        var name =
            power.Count == 0 ? ControlName
            : control.Count == 0 ? PowerName
            : $"{PowerName} and {ControlName}";
        return [new Sheetful(name, new(x, height, figures))];
    }
}
