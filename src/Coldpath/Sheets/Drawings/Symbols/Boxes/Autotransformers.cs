using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A tapped winding for each phase, in a box with its terminals.</summary>
internal static class Autotransformers
{
    public static Symbol Of(PowerPart part)
    {
        var casing = new Casing(part, 12.5, 15);
        var pen = new Pen();
        casing.Draw(pen);
        var phases = Math.Clamp(part.Ports.Count(p => p.Above), 1, 3);
        for (var i = 0; i < phases; i++)
            Coil(pen, casing.Middle + (i - (phases - 1) / 2.0) * 5, casing.Top + 1.25);
        // Their lower ends are the star.
        var (first, last) = (casing.Middle - (phases - 1) * 2.5, casing.Middle + (phases - 1) * 2.5);
        pen.Line(first, casing.Top + 11.25, last, casing.Top + 11.25);
        return pen.Hanging(casing.Height);
    }

    private static void Coil(Pen pen, double x, double y)
    {
        Windings.Bumps.Draw(pen, x, y);
        pen.Line(x - 1.75, y + 5, x, y + 5);
    }
}
