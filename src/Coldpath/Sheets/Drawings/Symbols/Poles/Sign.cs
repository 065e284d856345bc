namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>What an element of a pole looks like: drawn downwards from a place, from conductor to conductor.</summary>
/// <param name="Height">A multiple of 2.5.</param>
/// <param name="Draw">On a pen, from x, y to x, y + height.</param>
/// <param name="Moving">Where a linkage takes hold, from its top and from its axis; null when nothing moves.</param>
/// <param name="Framed">One box stands around those of all poles.</param>
internal sealed record Sign(
    double Height,
    Action<Pen, double, double> Draw,
    At? Moving = null,
    bool Framed = false
)
{
    public static Sign Plain { get; } = new(7.5, (pen, x, y) => pen.Line(x, y, x, y + 7.5));
}
