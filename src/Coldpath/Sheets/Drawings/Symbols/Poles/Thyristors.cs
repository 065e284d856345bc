namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Two thyristors, one for each half wave.</summary>
internal static class Thyristors
{
    private const double Height = 10;

    public static Sign Pair { get; } = new(Height, (pen, x, y) => Draw(pen, x, x, y));

    /// <summary>Moved aside, with the contact that takes over from them.</summary>
    public static Sign Bypassed(bool closed) =>
        new(
            Height,
            (pen, x, y) =>
            {
                Draw(pen, x, x - 1.25, y);
                var contact = x + 4.25;
                pen.Line(x, y + 0.5, contact, y + 0.5, contact, y + 3);
                pen.Line(contact, y + 7, contact, y + 9.5, x, y + 9.5);
                pen.Line(contact, y + 3, contact - 0.6, y + 3);
                pen.Blade(contact, y + 7, 4.4, closed ? -7 : -25);
            }
        );

    private static void Draw(Pen pen, double x, double middle, double y)
    {
        var (left, right) = (middle - 1.75, middle + 1.75);
        pen.Line(x, y, x, y + 1.5).Line(left, y + 1.5, Math.Max(right, x), y + 1.5);
        pen.Line(left, y + 8.5, Math.Max(right, x), y + 8.5).Line(x, y + 8.5, x, y + Height);
        pen.Line(left, y + 1.5, left, y + 8.5).Line(right, y + 1.5, right, y + 8.5);
        pen.Outline(left - 1.25, y + 3.75, left + 1.25, y + 3.75, left, y + 6);
        pen.Line(left - 1.25, y + 6, left + 1.25, y + 6).Line(left, y + 6, left - 1.4, y + 7.4);
        pen.Outline(right - 1.25, y + 6, right + 1.25, y + 6, right, y + 3.75);
        pen.Line(right - 1.25, y + 3.75, right + 1.25, y + 3.75).Line(right, y + 3.75, right + 1.4, y + 2.35);
    }
}
