using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Measures of what stands in a rung, in millimetres.</summary>
internal static class Cells
{
    public const double TagSize = 2.5;
    public const double TextSize = 2;
    public const double SmallSize = 1.8;

    /// <summary>Cells are as wide as a multiple of this, so that what stands below each other is in line.</summary>
    public const double Grid = 5;

    public const double Pad = 1.25;
    private const double MarkGap = 0.4;

    /// <summary>Letters over a wire end this high above it.</summary>
    public const double OverWire = 0.6;

    public static double OnGrid(double width) => Math.Ceiling((width - 0.001) / Grid) * Grid;

    /// <summary>A symbol with its letters: markings at its leads, lines above it, lines and a table below it.</summary>
    public static LaidCell OfSymbol(
        Symbol symbol,
        Figure figure,
        (Noted? Left, Noted? Right) marks,
        (Figure Figure, TextStack Lines) above,
        IReadOnlyList<(Figure Figure, TextStack Lines)> below,
        NotedTable? table,
        (int Into, int OutOf) knots,
        (bool Left, bool Right) open,
        IReadOnlyList<(string, int)> joined
    )
    {
        var markWidth = new[] { marks.Left, marks.Right }.Select(WidthOf).Max();
        var half = new[] { symbol.Width / 2 + markWidth, above.Lines.Width / 2, (table?.Width ?? 0) / 2 }
            .Concat(below.Select(b => b.Lines.Width / 2))
            .Max();
        var width = OnGrid(2 * (half + Pad));
        var (middle, x) = (width / 2, (width - symbol.Width) / 2);
        var figures = new List<Noted> { new(figure.Moved(x, 0), []) };
        if (marks.Left is { } left)
            figures.Add(left.Moved(x - MarkGap, -OverWire));
        if (marks.Right is { } right)
            figures.Add(right.Moved(x + symbol.Width + MarkGap, -OverWire));
        var overMarks = markWidth > 0 ? OverWire + SmallSize : 0;
        var up = Math.Max(-figure.Bounds.Top, overMarks) + 0.4 + above.Lines.Height;
        figures.Add(above.Lines.At(above.Figure, middle, -up, Anchor.Middle));
        var down = Math.Max(figure.Bounds.Bottom, 0) + 0.6;
        foreach (var (label, lines) in below)
        {
            figures.Add(lines.At(label, middle, down, Anchor.Middle));
            down += lines.Height + 0.2;
        }
        if (table is not null)
        {
            figures.AddRange(table.At(middle - (table.Width / 2), down));
            down += table.Height;
        }
        return new(
            width,
            up,
            down,
            knots.Into,
            knots.OutOf,
            open.Left ? null : x,
            open.Right ? null : x + symbol.Width,
            false,
            figures,
            joined
        );
    }

    /// <summary>A terminal's marking, to be moved to its lead: letters that end or begin at x = 0.</summary>
    public static Noted Mark(Figure figure, string text, bool onLeft)
    {
        var letters = new Lettering(
            new(0, -SmallSize * LetterWidths.Descent),
            text,
            SmallSize,
            onLeft ? Anchor.End : Anchor.Start
        );
        return new(figure, [new(letters, [])]);
    }

    private static double WidthOf(Noted? mark) =>
        mark is null ? 0 : MarkGap + mark.Mentions.Max(m => m.Letters.Length);
}
