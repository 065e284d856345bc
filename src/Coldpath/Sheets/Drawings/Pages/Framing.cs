using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>Puts content on paper: frame, title block, legend.</summary>
internal sealed class Framing(Panel panel, DrawRequest request, Shown shown)
{
    public PlacedSheet Sheet(Sheetful sheet, int number, int count)
    {
        var content = sheet.Content;
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
            sheet.Name,
            size.Width,
            size.Height,
            [
                frame,
                TitleBlock.Of(panel, size.Frame, number, count, sheet.Name, shown),
                .. Legend.Of(drawn, size.Frame, panel.System.Rules),
                .. drawn,
            ]
        );
    }
}
