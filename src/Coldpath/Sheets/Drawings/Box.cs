namespace Coldpath.Sheets.Drawings;

/// <summary>An upright rectangle in millimetres.</summary>
public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;
    public double Height => Bottom - Top;

    /// <summary>Whether the insides of two boxes share more than a touch.</summary>
    public bool Overlaps(Box other) =>
        Left < other.Right - Touch
        && other.Left < Right - Touch
        && Top < other.Bottom - Touch
        && other.Top < Bottom - Touch;

    public Box Moved(double x, double y) => new(Left + x, Top + y, Right + x, Bottom + y);

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public Box With(Box other) =>
        new(
            Math.Min(Left, other.Left),
            Math.Min(Top, other.Top),
            Math.Max(Right, other.Right),
            Math.Max(Bottom, other.Bottom)
        );

    /// <summary>The smallest box around all; null around nothing.</summary>
    public static Box? Around(IEnumerable<Box> boxes) =>
        boxes.Aggregate((Box?)null, (all, next) => all is { } box ? box.With(next) : next);

    /// <summary>Less than a hair: rounding, not a meeting.</summary>
    private const double Touch = 0.01;
}
