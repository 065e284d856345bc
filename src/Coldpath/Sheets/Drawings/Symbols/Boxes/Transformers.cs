using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Two windings: rings that overlap (IEC) or two coils with a core between (IEEE).</summary>
internal static class Transformers
{
    private const double Radius = 5;

    public static Symbol? Of(PowerPart part)
    {
        var above = part.Ports.Where(p => p.Above).OrderBy(p => p.X).ToList();
        var below = part.Ports.Where(p => !p.Above).OrderBy(p => p.X).ToList();
        if (!Fits(above) || !Fits(below))
            return null;
        var middle = (part.Ports.Min(p => p.X) + part.Ports.Max(p => p.X)) / 2;
        const double height = 27.5;
        var pen = new Pen();
        if (part.Rules == "NEC")
            Coils(pen, above, below, middle, height);
        else
            Rings(pen, above, below, middle, height);
        Markings.Beside(pen, part, height);
        Strokes.Across(pen, part);
        Bonds(pen, part, below, height);
        return pen.Hanging(height);
    }

    private static bool Fits(List<PowerPort> ports) =>
        ports.Count is 1 or 2 && (ports.Count == 1 || ports[1].X > ports[0].X);

    private static void Rings(
        Pen pen,
        List<PowerPort> above,
        List<PowerPort> below,
        double middle,
        double height
    )
    {
        const double upper = 10.5;
        const double lower = 17;
        pen.Ring(middle, upper, Radius).Ring(middle, lower, Radius);
        const double rise = 4.33;
        foreach (var (port, at) in Ends(above, middle, above.Count == 1 ? 0 : 2.5))
            pen.Line(port.X, 0, port.X, 3.75, at, 3.75, at, upper - (at == middle ? Radius : rise));
        foreach (var (port, at) in Ends(below, middle, below.Count == 1 ? 0 : 2.5))
            pen.Line(
                port.X,
                height,
                port.X,
                height - 3.75,
                at,
                height - 3.75,
                at,
                lower + (at == middle ? Radius : rise)
            );
    }

    private static void Coils(
        Pen pen,
        List<PowerPort> above,
        List<PowerPort> below,
        double middle,
        double height
    )
    {
        const double upper = 9;
        const double lower = 18.5;
        for (var i = 0; i < 4; i++)
        {
            pen.Arc(middle - 3.75 + 2.5 * i, upper, 1.25, 0, 180);
            pen.Arc(middle - 3.75 + 2.5 * i, lower, 1.25, 180, 180);
        }
        pen.Line(middle - 5, 13.25, middle + 5, 13.25).Line(middle - 5, 14.25, middle + 5, 14.25);
        foreach (var (port, at) in Ends(above, middle, above.Count == 1 ? 0 : 5))
            pen.Line(port.X, 0, port.X, 3.75, at, 3.75, at, upper);
        foreach (var (port, at) in Ends(below, middle, below.Count == 1 ? 0 : 5))
            pen.Line(port.X, height, port.X, height - 3.75, at, height - 3.75, at, lower);
    }

    private static IEnumerable<(PowerPort Port, double At)> Ends(
        List<PowerPort> ports,
        double middle,
        double aside
    ) =>
        ports.Count == 1
            ? [(ports[0], middle - aside)]
            : [(ports[0], middle - aside), (ports[1], middle + aside)];

    /// <summary>An earthed end of the secondary has its earth sign on the outer side of its lead.</summary>
    private static void Bonds(Pen pen, PowerPart part, List<PowerPort> below, double height)
    {
        foreach (var (terminal, _) in Earths.Bonds(part))
        foreach (var port in below.Where(p => p.Name.Split(' ').Contains(terminal)))
        {
            var side = port == below[0] && below.Count > 1 ? -1 : 1;
            var x = port.X + side * 7.5;
            var y = height - 3;
            pen.Dot(port.X, y).Line(port.X, y, x, y, x, y + 1);
            Earths.Sign(pen, x, y + 1);
            if (port.Conductors > 1)
                pen.Fit(terminal, (port.X + x) / 2, y - 0.6, 6, Anchor.Middle);
        }
    }
}
