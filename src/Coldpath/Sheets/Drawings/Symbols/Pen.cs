namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>Collects the shapes of a symbol. Coordinates are rounded to a thousandth, so that none depends on a sine's last digit.</summary>
internal sealed class Pen
{
    /// <summary>The module of IEC 60617: everything that meets something else lies on multiples of it.</summary>
    public const double M = 2.5;

    /// <summary>Font size of terminal markings.</summary>
    public const double Small = 1.8;

    /// <summary>The smallest that can be read on paper.</summary>
    private const double Least = 1.3;

    private readonly List<Shape> shapes = [];

    /// <summary>The shape through points given as x, y, x, y.</summary>
    public Pen Line(params ReadOnlySpan<double> xy) => Add(new Polyline(Points(xy), Ink.Line));

    public Pen Stroke(Ink ink, params ReadOnlySpan<double> xy) => Add(new Polyline(Points(xy), ink));

    public Pen Outline(params ReadOnlySpan<double> xy) =>
        Add(new Polyline(Points(xy), Ink.Line, Closed: true));

    public Pen Solid(params ReadOnlySpan<double> xy) =>
        Add(new Polyline(Points(xy), Ink.Line, Closed: true, Filled: true));

    public Pen Frame(double left, double top, double right, double bottom) =>
        Outline(left, top, right, top, right, bottom, left, bottom);

    public Pen Ring(double x, double y, double radius) => Add(new Ring(Round(x, y), radius, Ink.Line));

    public Pen Dot(double x, double y) => Add(new Ring(Round(x, y), 0.6, Ink.Line, Filled: true));

    public Pen Arc(double x, double y, double radius, double from, double sweep) =>
        Add(new Arc(Round(x, y), radius, from, sweep, Ink.Line));

    /// <summary>A blade, from its hinge, turned from upright by an angle in degrees, clockwise.</summary>
    public Pen Blade(double x, double y, double length, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return Line(x, y, x + length * sin, y - length * cos);
    }

    public Pen Text(string text, double x, double y, double size, Anchor anchor = Anchor.Middle) =>
        text.Length == 0 ? this : Add(new Lettering(Round(x, y), text, size, anchor));

    public Pen Bold(string text, double x, double y, double size) =>
        Add(new Lettering(Round(x, y), text, size, Anchor.Middle, Bold: true));

    /// <summary>Letters made smaller, and then shortened, until they fit into the room.</summary>
    public Pen Fit(string text, double x, double y, double room, Anchor anchor, double size = Small)
    {
        if (text.Length == 0)
            return this;
        while (size > Least && LetterWidths.Of(text, size, false) > room)
            size = Math.Max(Least, Math.Round(size - 0.1, 1));
        if (LetterWidths.Of(text, size, false) <= room)
            return Text(text, x, y, size, anchor);
        var kept = text.Length - 1;
        while (kept > 1 && LetterWidths.Of(Cut(text, kept), size, false) > room)
            kept--;
        return Text(Cut(text, kept), x, y, size, anchor);
    }

    /// <summary>Letters made smaller until they fit; none where they do not.</summary>
    public Pen Whole(string text, double x, double y, double room) =>
        LetterWidths.Of(text, Least, false) <= room ? Fit(text, x, y, room, Anchor.Middle) : this;

    /// <summary>A pair of surrogates is not cut in two.</summary>
    private static string Cut(string text, int kept) =>
        text[..(char.IsHighSurrogate(text[Math.Max(kept - 1, 0)]) ? kept - 1 : kept)] + "…";

    /// <summary>A symbol that hangs from y = 0.</summary>
    /// <param name="height">Of the body, a multiple of 2.5.</param>
    /// <param name="link">Height at which a link takes hold of the left edge; half way when not given.</param>
    public Symbol Hanging(double height, double? link = null)
    {
        var drawn = Covered();
        var body = new Box(Down(Math.Min(drawn.Left, -1)), 0, Up(Math.Max(drawn.Right, 1)), height);
        return new(shapes, body, new(body.Left, link ?? height / 2));
    }

    /// <summary>A symbol that lies on y = 0 from x = 0 to its width.</summary>
    /// <param name="width">Of the body, a multiple of 2.5.</param>
    public Symbol Lying(double width)
    {
        var drawn = Covered();
        var body = new Box(0, -Grid(-drawn.Top), width, Grid(drawn.Bottom));
        return new(shapes, body, new(width / 2, body.Bottom));
    }

    private Box Covered() => Box.Around(shapes.Select(s => s.Bounds)) ?? default;

    private Pen Add(Shape shape)
    {
        shapes.Add(shape);
        return this;
    }

    private static At[] Points(ReadOnlySpan<double> xy)
    {
        var points = new At[xy.Length / 2];
        for (var i = 0; i < points.Length; i++)
            points[i] = Round(xy[2 * i], xy[2 * i + 1]);
        return points;
    }

    private static At Round(double x, double y) => new(Thousandth(x), Thousandth(y));

    /// <summary>Adding nothing turns a negative zero into zero.</summary>
    private static double Thousandth(double value) => Math.Round(value, 3) + 0.0;

    private static double Down(double value) => Math.Floor(Thousandth(value) * 2) / 2;

    private static double Up(double value) => Math.Ceiling(Thousandth(value) * 2) / 2;

    private static double Grid(double value) => Math.Max(M, Math.Ceiling(Thousandth(value) / M) * M);
}
