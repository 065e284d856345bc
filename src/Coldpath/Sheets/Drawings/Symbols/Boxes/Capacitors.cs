using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Capacitors from line to line: one between two, or three in delta.</summary>
internal static class Capacitors
{
    public static Symbol? Of(PowerPart part)
    {
        var ports = part.Ports.OrderBy(p => p.X).ToList();
        var apart = ports.Zip(ports.Skip(1), (a, b) => b.X - a.X).All(d => d >= 5);
        if (ports.Any(p => !p.Above) || ports.Count > 3 || !apart)
            return null;
        var pen = new Pen();
        var height = ports.Count switch
        {
            1 => 12.5,
            2 => 10,
            _ => 15.0,
        };
        Markings.Beside(pen, part, 0);
        Strokes.Across(pen, part);
        if (ports.Count == 1)
            Upright(pen, ports[0]);
        else
        {
            Level(pen, ports[0].X, ports[1].X, 7);
            if (ports.Count == 3)
            {
                Level(pen, ports[1].X, ports[2].X, 7);
                Level(pen, ports[0].X, ports[2].X, 12.5);
            }
            foreach (var (i, port) in ports.Index())
            {
                var goesOn = ports.Count == 3 && i != 1;
                pen.Line(port.X, 0, port.X, goesOn ? 12.5 : 7);
                if (ports.Count == 3)
                    pen.Dot(port.X, 7);
            }
        }
        return pen.Hanging(height);
    }

    /// <summary>Of a group drawn as one: with the sign of delta for three.</summary>
    private static void Upright(Pen pen, PowerPort port)
    {
        var x = port.X;
        pen.Line(x, 0, x, 7).Line(x - 2.5, 7, x + 2.5, 7).Line(x - 2.5, 8.25, x + 2.5, 8.25);
        if (port.Conductors == 3)
            pen.Outline(x - 1.2, 11.5, x + 1.2, 11.5, x, 9.5);
    }

    private static void Level(Pen pen, double from, double to, double y)
    {
        var middle = (from + to) / 2;
        pen.Line(from, y, middle - 0.6, y).Line(middle + 0.6, y, to, y);
        pen.Line(middle - 0.6, y - 2, middle - 0.6, y + 2).Line(middle + 0.6, y - 2, middle + 0.6, y + 2);
    }
}
