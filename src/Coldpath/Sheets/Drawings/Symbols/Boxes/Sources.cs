using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Where current comes from: the conductors of an incoming supply, or a generator.</summary>
internal static class Sources
{
    private const double Terminal = 5;

    public static Symbol? Supply(PowerPart part)
    {
        if (part.Ports.Any(p => p.Above))
            return null;
        var pen = new Pen();
        var bond = Bond.Of(part);
        var height =
            bond is { Resistance: true } ? 15
            : part.OneLine ? 12.5
            : 10;
        foreach (var port in part.Ports)
        {
            if (part.Rules == "NEC")
                pen.Solid(port.X - 1, Terminal - 1, port.X + 1, Terminal - 1, port.X, Terminal + 1);
            else
                pen.Ring(port.X, Terminal, 1);
            pen.Line(port.X, Terminal + 1, port.X, height);
            Name(pen, part, port, 1.4, Terminal + 2.4, height - 3);
        }
        if (bond is not null)
        {
            pen.Line(bond.X, Terminal - 1, bond.X, Terminal - 2.5);
            bond.Draw(pen, Terminal - 2.5);
        }
        return pen.Hanging(height);
    }

    public static Symbol? Generator(PowerPart part)
    {
        if (part.Ports.Any(p => p.Above))
            return null;
        const double radius = 6;
        const double frame = 2 * radius + 3;
        var (first, last) = (part.Ports.Min(p => p.X), part.Ports.Max(p => p.X));
        var (pen, middle) = (new Pen(), (first + last) / 2);
        pen.Ring(middle, radius, radius).Bold("G", middle, radius + 0.5, 4.5);
        if (part.Device.Blueprint.Network.Supplies.Any(s => s.Direct))
            pen.Line(middle - 2, radius + 2.5, middle + 2, radius + 2.5);
        else
            Drives.Wave(pen, middle, radius + 2.75);
        var bond = Bond.Of(part);
        var height =
            bond is { Resistance: true } ? 27.5
            : bond is null ? 20
            : 22.5;
        var isBoxed = part.Ports.Count > 1;
        if (isBoxed)
            pen.Frame(first - 2.5, 2 * radius, last + 8.5, frame);
        foreach (var port in part.Ports)
        {
            pen.Line(port.X, isBoxed ? frame : 2 * radius, port.X, height);
            Name(pen, part, port, 0.5, isBoxed ? frame - 0.7 : height - 0.6, height - 2.5);
        }
        if (bond is not null)
        {
            pen.Dot(bond.X, frame + 2);
            bond.Draw(pen, frame + 2);
        }
        return pen.Hanging(height);
    }

    private static void Name(Pen pen, PowerPart part, PowerPort port, double aside, double y, double strokes)
    {
        if (port.Conductors > 1)
            Strokes.Across(pen, port.X, strokes, port.Conductors);
        else
            pen.Fit(
                port.Name,
                port.X + aside,
                y,
                Math.Min(8, Markings.Room(part, port) - aside),
                Anchor.Start
            );
    }
}
