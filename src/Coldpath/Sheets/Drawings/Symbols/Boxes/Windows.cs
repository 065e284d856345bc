using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>One ring around all conductors: what does not come back through it has gone to earth.</summary>
internal static class Windows
{
    /// <summary>Null when the conductors do not go straight through.</summary>
    public static Symbol? Of(PowerPart part)
    {
        var straight = part.Poles.All(p =>
            part.Ports[p.From].X == part.Ports[p.To].X && part.Ports[p.From].Above != part.Ports[p.To].Above
        );
        if (!straight || part.Poles.Count * 2 != part.Ports.Count)
            return null;
        var lead = Pen.M + Strokes.Room(part);
        var height = lead + 5 + Pen.M;
        var middle = lead + 2.5;
        var pen = new Pen();
        foreach (var pole in part.Poles)
            pen.Line(part.Ports[pole.From].X, 0, part.Ports[pole.From].X, height);
        var (first, last) = (part.Ports.Min(p => p.X), part.Ports.Max(p => p.X));
        pen.Arc(first, middle, 1.5, 90, 180).Arc(last, middle, 1.5, 270, 180);
        if (last > first)
            pen.Line(first, middle - 1.5, last, middle - 1.5).Line(first, middle + 1.5, last, middle + 1.5);
        pen.Line(last + 1.5, middle, last + 5, middle);
        pen.Frame(last + 5, middle - 2.5, last + 12.5, middle + 2.5)
            .Text(part.Rules == "NEC" ? "GF" : "IΔ>", last + 8.75, middle + 0.8, 2.2);
        Markings.Beside(pen, part, height);
        Strokes.Across(pen, part);
        return pen.Hanging(height);
    }
}
