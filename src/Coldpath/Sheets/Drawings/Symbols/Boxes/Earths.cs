namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Earth, and the bond of a conductor to it.</summary>
internal static class Earths
{
    public static Symbol? Of(PowerPart part)
    {
        if (
            part.Ports.Any(p => !p.Above)
            || part.Ports.Select(p => p.X).Distinct().Count() != part.Ports.Count
        )
            return null;
        var pen = new Pen();
        var (first, last) = (part.Ports.Min(p => p.X), part.Ports.Max(p => p.X));
        foreach (var port in part.Ports)
            pen.Line(port.X, 0, port.X, 2.5);
        if (last > first)
            pen.Stroke(Ink.Heavy, first, 2.5, last, 2.5);
        var x = part.Ports[0].X;
        // The bar of the panel is a protective earth: the sign stands in a ring.
        var isBar = part.Rules != "NEC" && !part.Device.Blueprint.Ratings.Any(r => r.Name == "electrode");
        pen.Line(x, 2.5, x, 5);
        Sign(pen, x, 5);
        if (isBar)
            pen.Ring(x, 5.75, 3);
        foreach (var port in part.Ports)
            pen.Fit(port.Name, port.X + 0.6, 1.9, Poles.Markings.Room(part, port), Anchor.Start);
        return pen.Hanging(isBar ? 10 : 7.5);
    }

    /// <summary>Three strokes, each shorter than the one above, 2 mm high.</summary>
    public static void Sign(Pen pen, double x, double y) =>
        pen.Line(x - 2, y, x + 2, y)
            .Line(x - 1.3, y + 0.9, x + 1.3, y + 0.9)
            .Line(x - 0.6, y + 1.8, x + 0.6, y + 1.8);

    /// <summary>Terminals that the device itself joins to the earth, and whether through a resistance.</summary>
    public static IEnumerable<(string Terminal, bool Resistance)> Bonds(PowerPart part)
    {
        var network = part.Device.Blueprint.Network;
        return from e in network.Elements
            where (e.A == network.Earth) != (e.B == network.Earth)
            select (e.A == network.Earth ? e.B : e.A, e.Type == Wiring.ElementType.Series && !IsGround(part));
    }

    /// <summary>With an earth of the panel's own the way back is the ground: no resistor is built in.</summary>
    private static bool IsGround(PowerPart part) =>
        part.Device.Blueprint.Ratings.Any(r => r.Name == "earthing" && r.Text == "TT");
}
