using Coldpath.Sheets.Drawings.Symbols.Poles;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A box with a pair of thyristors in each controlled leg, and the internal bypass where there is one.</summary>
internal static class SoftStarters
{
    public static Symbol? Of(PowerPart part)
    {
        var legs = part.Poles.GroupBy(p => (p.From, p.To)).ToList();
        if (legs.Count == 0 || !legs.All(l => IsStraight(part, l.First())))
            return null;
        var casing = new Casing(part, 10);
        var pen = new Pen();
        casing.Draw(pen);
        foreach (var leg in legs)
        {
            var x = part.Ports[leg.Key.From].X;
            pen.Line(x, casing.Upper, x, casing.Top);
            SignOf([.. leg]).Draw(pen, x, casing.Top);
            pen.Line(x, casing.Bottom, x, casing.Lower);
        }
        return pen.Hanging(casing.Height);
    }

    private static Sign SignOf(IReadOnlyList<Pole> leg)
    {
        var bypass = leg.FirstOrDefault(p => p.Types.Contains(ElementType.Contact));
        if (bypass is not null)
            return Thyristors.Bypassed(bypass.IsClosed(bypass.Types.ToList().IndexOf(ElementType.Contact)));
        return leg.Any(p => p.Types.Contains(ElementType.Semiconductor))
            ? Thyristors.Pair
            : new(10, (pen, x, y) => pen.Line(x, y, x, y + 10));
    }

    private static bool IsStraight(PowerPart part, Pole pole)
    {
        var (a, b) = (part.Ports[pole.From], part.Ports[pole.To]);
        return a.Above != b.Above && a.X == b.X;
    }
}
