namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>In one-line form: a stroke for each conductor across the upper lead, one alone for more than three, and their number.</summary>
internal static class Strokes
{
    /// <summary>How much longer the upper lead is for it.</summary>
    public static double Room(PowerPart part) => IsNeeded(part) ? Pen.M : 0;

    public static void Across(Pen pen, PowerPart part)
    {
        if (!IsNeeded(part))
            return;
        foreach (var port in part.Ports.Where(p => p.Above && p.Conductors > 1))
            Across(pen, port.X, 2.5, port.Conductors);
    }

    public static void Across(Pen pen, double x, double y, int conductors)
    {
        var strokes = conductors <= 3 ? conductors : 1;
        for (var i = 0; i < strokes; i++)
        {
            var at = y + (i - (strokes - 1) / 2.0) * 0.9;
            pen.Line(x - 1, at + 0.6, x + 1, at - 0.6);
        }
        pen.Text($"{conductors}", x + 1.4, y + 0.6, Pen.Small, Anchor.Start);
    }

    private static bool IsNeeded(PowerPart part) =>
        part.OneLine && part.Ports.Any(p => p.Above && p.Conductors > 1);
}
