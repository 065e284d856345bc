using Coldpath.Findings;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Cells that are no part of a device: names over wires, arrows to elsewhere, the earth.</summary>
internal static class Flags
{
    /// <summary>Half the lengths of the bars in the sign of the earth.</summary>
    private static readonly double[] EarthBars = [2.5, 1.6, 0.7];

    /// <summary>Letters over a wire that goes on under them.</summary>
    public static LaidCell Over(Figure figure, TextStack lines, int knot)
    {
        var width = Cells.OnGrid(lines.Width + (2 * Cells.Pad));
        var up = lines.Height + Cells.OverWire;
        var letters = lines.At(figure, width / 2, -up, Anchor.Middle);
        return new(width, up, 0.5, knot, knot, 0, width, true, [letters], []);
    }

    /// <summary>A piece of wire.</summary>
    public static LaidCell Wire(int knot) => new(Cells.Grid, 1, 1, knot, knot, 0, Cells.Grid, true, [], []);

    /// <summary>An arrowhead with letters where a wire comes from or goes to elsewhere.</summary>
    /// <param name="begins">The wire begins here and goes to the right.</param>
    public static LaidCell Of(Figure figure, TextStack lines, int knot, bool begins)
    {
        const double head = 2.2;
        var width = lines.Width + head + 1.6 + Cells.Pad;
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
            []
        );
    }

    /// <summary>The sign of the earth at a wire's end.</summary>
    public static LaidCell Earth(Span span, int knot, bool begins)
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
}
