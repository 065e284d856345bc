namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Fuse links, heaters, releases and resistors in a pole.</summary>
internal static class Links
{
    private const double Height = 7.5;

    /// <summary>IEC: a rectangle with the line through it; the line is broken in a blown one.</summary>
    public static Sign Fuse(bool whole) =>
        new(
            Height,
            (pen, x, y) =>
            {
                Through(pen, x, y, whole);
                pen.Frame(x - 1.25, y + 0.75, x + 1.25, y + 6.75);
            }
        );

    /// <summary>IEEE: with a cap at each end.</summary>
    public static Sign CappedFuse(bool whole) =>
        new(
            Height,
            (pen, x, y) =>
            {
                Through(pen, x, y, whole);
                pen.Frame(x - 1.25, y + 0.75, x + 1.25, y + 6.75);
                pen.Line(x - 1.25, y + 2, x + 1.25, y + 2).Line(x - 1.25, y + 5.5, x + 1.25, y + 5.5);
            }
        );

    /// <summary>IEC: a step in the line, inside a box around all poles.</summary>
    public static Sign HeaterStep { get; } =
        new(
            Height,
            (pen, x, y) => pen.Line(x, y, x, y + 2.5, x + 2, y + 2.5, x + 2, y + 5, x, y + 5, x, y + Height),
            Framed: true
        );

    /// <summary>IEEE: two hooks that pass each other.</summary>
    public static Sign HeaterHooks { get; } =
        new(
            Height,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 1.25)
                    .Arc(x, y + 2.75, 1.5, 270, 180)
                    .Arc(x, y + 4.75, 1.5, 90, 180)
                    .Line(x, y + 6.25, x, y + Height)
        );

    /// <summary>A short circuit's release: the current mark.</summary>
    public static Sign MagneticRelease { get; } =
        new(
            5,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 0.5)
                    .Frame(x - 2, y + 0.5, x + 2, y + 4.5)
                    .Text("I>", x, y + 3.2, 2.2)
                    .Line(x, y + 4.5, x, y + 5)
        );

    public static Sign Resistor { get; } =
        new(
            Height,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 0.75)
                    .Frame(x - 1.25, y + 0.75, x + 1.25, y + 6.75)
                    .Line(x, y + 6.75, x, y + Height)
        );

    public static Sign Zigzag { get; } =
        new(
            Height,
            (pen, x, y) =>
                pen.Line(
                    x,
                    y,
                    x,
                    y + 0.75,
                    x + 1.25,
                    y + 1.25,
                    x - 1.25,
                    y + 2.25,
                    x + 1.25,
                    y + 3.25,
                    x - 1.25,
                    y + 4.25,
                    x + 1.25,
                    y + 5.25,
                    x - 1.25,
                    y + 6.25,
                    x,
                    y + 6.75,
                    x,
                    y + Height
                )
        );

    /// <summary>A resistor divided by strokes.</summary>
    public static Sign Heater { get; } =
        new(
            Height,
            (pen, x, y) =>
            {
                Resistor.Draw(pen, x, y);
                for (var down = 2.25; down < 6.5; down += 1.5)
                    pen.Line(x - 1.25, y + down, x + 1.25, y + down);
            }
        );

    /// <summary>An arrow into a box, whose other end is the earth's.</summary>
    public static Sign Arrester { get; } =
        new(
            Height,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 4.25)
                    .Frame(x - 1.25, y + 0.75, x + 1.25, y + 6.75)
                    .Solid(x - 0.6, y + 3.25, x + 0.6, y + 3.25, x, y + 4.75)
                    .Line(x, y + 6.75, x, y + Height)
        );

    public static Sign Diode { get; } =
        new(
            Height,
            (pen, x, y) =>
                pen.Line(x, y, x, y + Height)
                    .Outline(x - 1.5, y + 2.5, x + 1.5, y + 2.5, x, y + 5)
                    .Line(x - 1.5, y + 5, x + 1.5, y + 5)
        );

    private static void Through(Pen pen, double x, double y, bool whole)
    {
        if (whole)
            pen.Line(x, y, x, y + Height);
        else
            pen.Line(x, y, x, y + 2.9).Line(x, y + 4.6, x, y + Height);
    }
}
