using Coldpath.Sheets.Drawings.Symbols.Poles;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A box for what has no symbol of its own: terminal names, and between them what the poles are made of.</summary>
internal static class GenericBox
{
    public static Symbol Of(PowerPart part)
    {
        var straight = part
            .Poles.Where(p => part.Ports[p.From].Above != part.Ports[p.To].Above)
            .Where(p => part.Ports[p.From].X == part.Ports[p.To].X)
            .DistinctBy(p => part.Ports[p.From].X)
            .ToList();
        var inside = straight.Select(p => Tall(part, p)).Append(Pen.M).Max();
        var casing = new Casing(part, inside + (straight.Count == 0 ? 2.5 : 0));
        var pen = new Pen();
        casing.Draw(pen);
        foreach (var pole in straight)
            Draw(pen, part, pole, casing);
        if (straight.Count == 0)
            Words(pen, part, casing);
        return pen.Hanging(casing.Height);
    }

    private static void Words(Pen pen, PowerPart part, Casing casing)
    {
        var name = part.Device.Blueprint.Kind.Name;
        pen.Fit(
            name,
            casing.Middle,
            (casing.Upper + casing.Lower) / 2 + 0.8,
            casing.Right - casing.Left - 2,
            Anchor.Middle,
            2.2
        );
    }

    private static void Draw(Pen pen, PowerPart part, Pole pole, Casing casing)
    {
        var x = part.Ports[pole.From].X;
        var y = casing.Top;
        pen.Line(x, casing.Upper, x, y);
        foreach (var sign in Signs(part, pole))
        {
            sign.Draw(pen, x, y);
            y += sign.Height;
        }
        pen.Line(x, y, x, casing.Lower);
    }

    private static double Tall(PowerPart part, Pole pole) => Signs(part, pole).Sum(s => s.Height);

    private static IEnumerable<Sign> Signs(PowerPart part, Pole pole)
    {
        var down = part.Ports[pole.From].Above ? pole : pole.Turned;
        return down
            .Types.Index()
            .Where(t => t.Item != ElementType.Conductor)
            .Take(4)
            .Select(t => (t.Item, Closed: down.IsClosed(t.Index)))
            .Select(t => Signing.Of(part, t.Item, t.Closed) ?? Plain(part, t.Item, t.Closed))
            .DefaultIfEmpty(Sign.Plain);
    }

    private static Sign Plain(PowerPart part, ElementType type, bool closed)
    {
        var ieee = part.Rules == "NEC";
        return type switch
        {
            ElementType.Thermal => ieee ? Links.HeaterHooks : Links.HeaterStep with { Framed = false },
            ElementType.Semiconductor => Thyristors.Pair,
            ElementType.Series or ElementType.Load => ieee ? Links.Zigzag : Links.Resistor,
            ElementType.Contact => ieee ? Switches.Bars(closed) : Switches.Blade(Function.None, closed),
            _ => Sign.Plain,
        };
    }
}
