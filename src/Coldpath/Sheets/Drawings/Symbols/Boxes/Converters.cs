namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A box, a diagonal, and the sort of current on either side; a battery below it where there is one.</summary>
internal static class Converters
{
    /// <summary>Null when the device converts nothing.</summary>
    public static Symbol? Of(PowerPart part)
    {
        if (part.Device.Blueprint.Network.Converters is not [var converter, ..])
            return null;
        var stored = part.Device.Blueprint.Kind.Symbol == "ups";
        var casing = new Casing(part, stored ? 15 : 10, 15);
        var pen = new Pen();
        casing.Draw(pen);
        var foot = casing.Top + 10;
        pen.Line(casing.Middle - 6, foot, casing.Middle + 6, casing.Top);
        // What goes on from a battery takes in the sort of current that it gives.
        Current(pen, stored && converter.Output.Direct, casing.Middle - 3.5, casing.Top + 2.5);
        Current(pen, converter.Output.Direct, casing.Middle + 3.5, foot - 2.5);
        if (stored)
            Battery(pen, casing.Middle, casing.Bottom - 2.25);
        return pen.Hanging(casing.Height);
    }

    /// <summary>A wave, or a stroke over a broken one (IEC 60617, part 2).</summary>
    private static void Current(Pen pen, bool direct, double x, double y)
    {
        if (!direct)
        {
            Drives.Wave(pen, x, y);
            return;
        }
        pen.Line(x - 2, y - 0.5, x + 2, y - 0.5);
        for (var i = 0; i < 3; i++)
            pen.Line(x - 2 + 1.5 * i, y + 0.5, x - 1 + 1.5 * i, y + 0.5);
    }

    private static void Battery(Pen pen, double x, double y) =>
        pen.Line(x - 3, y, x - 0.5, y)
            .Line(x - 0.5, y - 2, x - 0.5, y + 2)
            .Line(x + 0.5, y - 1, x + 0.5, y + 1)
            .Line(x + 0.5, y, x + 3, y);
}
