using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Pages;
using Coldpath.Sheets.Drawings.Power;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>Draws a panel: power first, then control, on as many sheets as the paper asks for.</summary>
public static class Drafting
{
    /// <param name="netlist">For voltages of rails; null when the panel cannot be searched.</param>
    public static Drawing Draw(Panel panel, Netlist? netlist, DrawRequest request, Shown shown)
    {
        var division = Division.Of(panel);
        var pages = new PowerPages(panel, division, request, shown);
        var units = pages.Deal();
        var contents = units.Select(u => pages.Draw(u, _ => "control")).ToList();
        var sheets = contents.Select(
            (c, i) => Framed(panel, request, shown, "power", c, i + 1, contents.Count)
        );
        return new(panel.Name, [.. sheets]);
    }

    private static PlacedSheet Framed(
        Panel panel,
        DrawRequest request,
        Shown shown,
        string name,
        PlacedPart content,
        int number,
        int count
    )
    {
        var size =
            SheetSize.Of(request.Paper).Where(s => s.Fits(content)).MaxBy(s => s.ScaleFor(content))
            ?? SheetSize.Around(content);
        var scale = size.ScaleFor(content);
        var drawn = content
            .Figures.Select(f => f.Scaled(scale).Moved(size.Content.Left, size.Content.Top))
            .ToList();
        var frame = new Figure
        {
            Kind = FigureKind.Paper,
            Title = "frame",
            Shapes = [TitleBlock.Rectangle(size.Frame, Ink.Heavy)],
        };
        return new(
            number,
            name,
            size.Width,
            size.Height,
            [
                frame,
                TitleBlock.Of(panel, size.Frame, number, count, name, shown),
                .. Legend.Of(drawn, size.Frame),
                .. drawn,
            ]
        );
    }
}
