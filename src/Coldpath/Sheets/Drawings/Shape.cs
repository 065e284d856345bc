namespace Coldpath.Sheets.Drawings;

/// <summary>One mark on paper.</summary>
public abstract record Shape
{
    /// <summary>What it covers, line widths left aside.</summary>
    public abstract Box Bounds { get; }

    public abstract Shape Moved(double x, double y);

    /// <summary>Larger or smaller about (0, 0); lines keep their widths.</summary>
    public abstract Shape Scaled(double by);
}

/// <summary>A line from point to point.</summary>
/// <param name="Closed">The last point is joined to the first.</param>
/// <param name="Filled">With ink inside.</param>
public sealed record Polyline(IReadOnlyList<At> Points, Ink Ink, bool Closed = false, bool Filled = false)
    : Shape
{
    public override Box Bounds =>
        new(Points.Min(p => p.X), Points.Min(p => p.Y), Points.Max(p => p.X), Points.Max(p => p.Y));

    public override Shape Moved(double x, double y) =>
        this with
        {
            Points = [.. Points.Select(p => p.Plus(x, y))],
        };

    public override Shape Scaled(double by) => this with { Points = [.. Points.Select(p => p.Times(by))] };
}

/// <summary>A full circle.</summary>
public sealed record Ring(At Centre, double Radius, Ink Ink, bool Filled = false) : Shape
{
    public override Box Bounds => new Box(Centre.X, Centre.Y, Centre.X, Centre.Y).Grown(Radius);

    public override Shape Moved(double x, double y) => this with { Centre = Centre.Plus(x, y) };

    public override Shape Scaled(double by) => this with { Centre = Centre.Times(by), Radius = Radius * by };
}

/// <summary>Part of a circle, drawn clockwise as seen on paper; angles in degrees from the right, clockwise.</summary>
public sealed record Arc(At Centre, double Radius, double From, double Sweep, Ink Ink) : Shape
{
    public override Box Bounds => new Box(Centre.X, Centre.Y, Centre.X, Centre.Y).Grown(Radius);

    public override Shape Moved(double x, double y) => this with { Centre = Centre.Plus(x, y) };

    public override Shape Scaled(double by) => this with { Centre = Centre.Times(by), Radius = Radius * by };
}

public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>A line of text.</summary>
/// <param name="At">Its baseline's start, middle or end, as anchored.</param>
/// <param name="Size">Font size in millimetres; capitals are 0.72 of it.</param>
/// <param name="Upwards">Read from below: turned a quarter to the left about <paramref name="At"/>.</param>
public sealed record Lettering(
    At At,
    string Text,
    double Size,
    Anchor Anchor = Anchor.Start,
    bool Bold = false,
    bool Upwards = false
) : Shape
{
    public double Length => LetterWidths.Of(Text, Size, Bold);

    public override Box Bounds
    {
        get
        {
            var before = Anchor switch
            {
                Anchor.Start => 0,
                Anchor.Middle => Length / 2,
                _ => Length,
            };
            var (up, down) = (Size * LetterWidths.Ascent, Size * LetterWidths.Descent);
            return Upwards
                ? new(At.X - up, At.Y - (Length - before), At.X + down, At.Y + before)
                : new(At.X - before, At.Y - up, At.X - before + Length, At.Y + down);
        }
    }

    public override Shape Moved(double x, double y) => this with { At = At.Plus(x, y) };

    public override Shape Scaled(double by) => this with { At = At.Times(by), Size = Size * by };
}
