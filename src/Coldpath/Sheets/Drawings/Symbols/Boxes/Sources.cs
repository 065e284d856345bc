namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Where current comes from: conductors of an incoming supply, or a generator.</summary>
internal static class Sources
{
    private const double Terminal = 5;

    public static Symbol? Supply(PowerPart part)
    {
        if (!AllBelow(part))
            return null;
        var pen = new Pen();
        var height = Bond(pen, part, Terminal, 10);
        foreach (var port in part.Ports)
        {
            if (part.Rules == "NEC")
                pen.Solid(port.X - 1, Terminal - 1, port.X + 1, Terminal - 1, port.X, Terminal + 1);
            else
                pen.Ring(port.X, Terminal, 1);
            pen.Line(port.X, Terminal + 1, port.X, height);
            if (port.Conductors > 1)
                Poles.Strokes.Across(pen, port.X, height - 2.5, port.Conductors);
            else
                pen.Fit(
                    port.Name,
                    port.X + 1.4,
                    Terminal + 2.4,
                    Poles.Markings.Room(part, port) - 1,
                    Anchor.Start
                );
        }
        return pen.Hanging(height);
    }

    public static Symbol? Generator(PowerPart part)
    {
        if (!AllBelow(part))
            return null;
        var pen = new Pen();
        var middle = (part.Ports.Min(p => p.X) + part.Ports.Max(p => p.X)) / 2;
        var isDirect = part.Device.Blueprint.Network.Supplies.Any(s => s.Direct);
        const double radius = 6;
        pen.Ring(middle, radius, radius).Bold("G", middle, radius + 0.5, 4.5);
        if (isDirect)
            pen.Line(middle - 2, radius + 2.5, middle + 2, radius + 2.5);
        else
            Drives.Wave(pen, middle, radius + 2.75);
        var height = Bond(pen, part, 15, 20);
        if (part.Ports.Count == 1)
            pen.Line(part.Ports[0].X, 2 * radius, part.Ports[0].X, height);
        else
        {
            pen.Stroke(Ink.Heavy, part.Ports.Min(p => p.X), 13.75, part.Ports.Max(p => p.X), 13.75);
            pen.Line(middle, 2 * radius, middle, 13.75);
            foreach (var port in part.Ports)
                pen.Line(port.X, 13.75, port.X, height);
        }
        foreach (var port in part.Ports)
            if (port.Conductors > 1)
                Poles.Strokes.Across(pen, port.X, height - 2.5, port.Conductors);
            else
                pen.Fit(port.Name, port.X + 0.6, height - 0.6, Poles.Markings.Room(part, port), Anchor.Start);
        return pen.Hanging(height);
    }

    /// <summary>From the bonded conductor over the others to an earth sign on their right.</summary>
    /// <returns>The symbol's height.</returns>
    private static double Bond(Pen pen, PowerPart part, double y, double height)
    {
        var bonds = Earths.Bonds(part).ToList();
        var bonded = part.Ports.FirstOrDefault(p =>
            p.Name.Split(' ').Any(n => bonds.Any(b => b.Terminal == n))
        );
        if (bonded is null)
            return height;
        var resistance = bonds.First(b => bonded.Name.Split(' ').Contains(b.Terminal)).Resistance;
        var right = part.Ports.Max(p => p.X) + 7.5;
        pen.Line(bonded.X, y - 1, bonded.X, y - 2.5, right, y - 2.5, right, y);
        if (resistance)
            pen.Frame(right - 1, y, right + 1, y + 5).Line(right, y + 5, right, y + 6);
        Earths.Sign(pen, right, resistance ? y + 6 : y);
        return height;
    }

    private static bool AllBelow(PowerPart part) => part.Ports.All(p => !p.Above);
}
