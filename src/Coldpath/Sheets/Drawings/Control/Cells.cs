using Coldpath.Findings;
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

    private const double Pad = 1.25;
    private const double MarkGap = 0.4;

    /// <summary>Letters over a wire end this high above it.</summary>
    private const double OverWire = 0.6;

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

    /// <summary>Letters over a wire that goes on under them.</summary>
    public static LaidCell OverWireOf(
        Figure figure,
        TextStack lines,
        int knot,
        IReadOnlyList<(string, int)> joined
    )
    {
        var width = OnGrid(lines.Width + (2 * Pad));
        var up = lines.Height + OverWire;
        var letters = lines.At(figure, width / 2, -up, Anchor.Middle);
        return new(width, up, 0.5, knot, knot, 0, width, true, [letters], joined);
    }

    /// <summary>A piece of wire.</summary>
    public static LaidCell Wire(int knot) => new(Grid, 1, 1, knot, knot, 0, Grid, true, [], []);

    /// <summary>An arrowhead with letters where a wire comes from or goes to elsewhere.</summary>
    /// <param name="begins">The wire begins here and goes to the right.</param>
    public static LaidCell Flag(
        Figure figure,
        TextStack lines,
        int knot,
        bool begins,
        IReadOnlyList<(string, int)> joined
    )
    {
        const double head = 2.2;
        var width = lines.Width + head + 1.6 + Pad;
        var half = Math.Max(lines.Height / 2, head / 2);
        var tip = begins ? width : head;
        Shape arrow = new Polyline(
            [new(tip, 0), new(tip - head, -head / 2), new(tip - head, head / 2)],
            Ink.Fine,
            Closed: true,
            Filled: true
        );
        var x = begins ? width - head - 0.8 : head + 0.8;
        var letters = lines.At(
            figure with
            {
                Shapes = [arrow],
            },
            x,
            -lines.Height / 2,
            begins ? Anchor.End : Anchor.Start
        );
        return new(
            width,
            half,
            half,
            knot,
            knot,
            begins ? null : 0,
            begins ? width : null,
            false,
            [letters],
            joined
        );
    }

    /// <summary>The sign of the earth at a wire's end.</summary>
    public static LaidCell EarthSign(Span span, int knot, bool begins)
    {
        const double width = 7;
        var figure = new Figure
        {
            Kind = FigureKind.Reference,
            Title = "earth",
            Net = PanelWires.Earth,
            Span = span,
            Shapes = EarthShapes(begins ? new(width, 0) : new(0, 0), begins ? -1 : 1),
        };
        return new(
            width,
            0.5,
            6.5,
            knot,
            knot,
            begins ? null : 0,
            begins ? width : null,
            false,
            [new(figure, [])],
            []
        );
    }

    /// <summary>Half the lengths of an earth sign's bars.</summary>
    private static readonly double[] EarthBars = [2.5, 1.6, 0.7];

    /// <summary>From a point a short way aside, then down to three bars (IEC 60617 S00200).</summary>
    /// <param name="side">1 to the right, -1 to the left.</param>
    public static IReadOnlyList<Shape> EarthShapes(At from, int side)
    {
        var x = from.X + (side * 3.5);
        return
        [
            new Polyline([from, new(x, from.Y), new(x, from.Y + 3)], Ink.Line),
            .. EarthBars.Select(
                (half, i) =>
                    new Polyline([new(x - half, from.Y + 3 + i), new(x + half, from.Y + 3 + i)], Ink.Line)
            ),
        ];
    }

    private static double WidthOf(Noted? mark) =>
        mark is null ? 0 : MarkGap + mark.Mentions.Max(m => m.Letters.Length);
}
