using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A motor: a ring with M, its phases and the kind of current; more than three leads end in a terminal box on it.</summary>
internal static class Motors
{
    private const double Radius = 7.5;

    public static Symbol Of(PowerPart part)
    {
        var pen = new Pen();
        var above = part.Ports.Where(p => p.Above).ToList();
        var places = above.Select(p => p.X).Order().ToList();
        var direct = above.Count == part.Ports.Count && places.Count <= 3 && places[^1] - places[0] <= 20;
        return direct ? Direct(pen, part, places) : Boxed(pen, part);
    }

    private static Symbol Direct(Pen pen, PowerPart part, List<double> places)
    {
        var middle = (places[0] + places[^1]) / 2;
        var centre = Radius + 5;
        foreach (var x in places)
            Lead(pen, x, middle, centre);
        Letters(pen, part, middle, centre);
        Markings.Beside(pen, part, 0);
        Strokes.Across(pen, part);
        return pen.Hanging(centre + Radius);
    }

    /// <summary>Down to the ring, the outer ones slanting to where they meet it at right angles.</summary>
    private static void Lead(Pen pen, double x, double middle, double centre)
    {
        var aside = x - middle;
        if (Math.Abs(aside) < Radius * 0.7)
        {
            pen.Line(x, 0, x, centre - Math.Sqrt(Radius * Radius - aside * aside));
            return;
        }
        var slant = Radius / Math.Sqrt(2);
        pen.Line(x, 0, x, centre - Math.Abs(aside), middle + Math.Sign(aside) * slant, centre - slant);
    }

    /// <summary>The terminal box is on the side of the leads; with leads on both sides it is around the ring.</summary>
    private static Symbol Boxed(Pen pen, PowerPart part)
    {
        const double row = 2.5;
        var (hasAbove, hasBelow) = (part.Ports.Any(p => p.Above), part.Ports.Any(p => !p.Above));
        var (first, last) = (part.Ports.Min(p => p.X), part.Ports.Max(p => p.X));
        var middle = (first + last) / 2;
        var (left, right) = (Math.Min(first - 2.5, middle - 10), Math.Max(last + 8.5, middle + 10));
        var upper = hasAbove ? Pen.M + Strokes.Room(part) : 0;
        var centre = upper + (hasAbove ? row : 0) + Radius;
        var lower = centre + Radius + (hasBelow ? row : 0);
        var height = lower + (hasBelow ? Pen.M : 0);
        pen.Frame(left, hasAbove ? upper : centre + Radius, right, hasBelow ? lower : centre - Radius);
        foreach (var port in part.Ports)
        {
            pen.Line(port.X, port.Above ? 0 : height, port.X, port.Above ? upper : lower);
            if (port.Conductors == 1)
                pen.Fit(
                    port.Name,
                    port.X + 0.5,
                    port.Above ? upper + 1.9 : lower - 0.6,
                    Math.Min(Markings.Room(part, port), 8),
                    Anchor.Start
                );
        }
        Letters(pen, part, middle, centre);
        Strokes.Across(pen, part);
        return pen.Hanging(height);
    }

    private static void Letters(Pen pen, PowerPart part, double x, double y)
    {
        pen.Ring(x, y, Radius).Bold("M", x, y + 0.5, 5);
        if (part.Device.Blueprint.Kind.Symbol == "dc motor")
        {
            pen.Line(x - 2, y + 3.6, x + 2, y + 3.6);
            return;
        }
        var phases = part.Device.Blueprint.Ratings.FirstOrDefault(r => r.Name == "phases")?.Text;
        var number = phases is "1" or "3" ? phases : "";
        var wave = number.Length == 0 ? x : x + 1.25;
        pen.Text(number, x - 2, y + 4.7, 3.2);
        Drives.Wave(pen, wave, y + 3.6);
    }
}
