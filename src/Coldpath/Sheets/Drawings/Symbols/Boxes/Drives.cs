namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A converter from alternating to alternating current: a box, a diagonal and the two waves.</summary>
internal static class Drives
{
    public static Symbol Of(PowerPart part)
    {
        var casing = new Casing(part, 10, 15);
        var pen = new Pen();
        casing.Draw(pen);
        var (left, right) = (casing.Middle - 6, casing.Middle + 6);
        pen.Line(left, casing.Bottom, right, casing.Top);
        Wave(pen, casing.Middle - 3.5, casing.Top + 2.5);
        Wave(pen, casing.Middle + 3.5, casing.Bottom - 2.5);
        return pen.Hanging(casing.Height);
    }

    /// <summary>A period of alternating current, 4 mm long.</summary>
    public static void Wave(Pen pen, double x, double y) =>
        pen.Arc(x - 1, y, 1, 180, 180).Arc(x + 1, y, 1, 0, 180);
}
