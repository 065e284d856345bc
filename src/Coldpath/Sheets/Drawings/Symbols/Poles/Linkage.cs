namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>The dashed line that joins the blades of a device, with a handle where a hand moves them.</summary>
internal static class Linkage
{
    /// <returns>The height at which a link takes hold; null when nothing moves.</returns>
    public static double? Draw(
        Pen pen,
        PowerPart part,
        List<Column> columns,
        List<IReadOnlyList<Sign>> signs,
        double lead
    )
    {
        var grips = columns.Zip(signs, (c, s) => Grip(c, s, lead)).OfType<At>().ToList();
        if (grips.Count == 0)
            return null;
        var y = grips[0].Y;
        var left = Math.Floor((grips.Min(g => g.X) - 1) * 2) / 2;
        if (IsByHand(part))
        {
            left = grips.Min(g => g.X) - 4;
            left = Math.Floor(left * 2) / 2;
            pen.Line(left, y - 1.25, left, y + 1.25);
        }
        pen.Stroke(Ink.Dashed, left, y, grips.Max(g => g.X), y);
        return y;
    }

    private static At? Grip(Column column, IReadOnlyList<Sign> signs, double lead)
    {
        var y = lead;
        foreach (var sign in signs)
        {
            if (sign.Moving is { } moving)
                return moving.Plus(column.X, y);
            y += sign.Height;
        }
        return null;
    }

    private static bool IsByHand(PowerPart part) =>
        part.Device.Blueprint.Kind.Symbol is "disconnector" or "fused disconnector" or "breaker"
        || part.Device.Blueprint.Ratings.Any(r => r.Name == "operation" && r.Text == "manual");
}
