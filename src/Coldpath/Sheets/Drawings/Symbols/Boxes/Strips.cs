namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Terminals of a strip: a ring on each line.</summary>
internal static class Strips
{
    public static Symbol? Of(PowerPart part)
    {
        var places = part.Ports.GroupBy(p => p.X).ToList();
        if (places.Any(g => g.Select(p => p.Name).Distinct().Count() > 1 || g.Count() > 2))
            return null;
        const double height = 5;
        const double radius = 0.9;
        var pen = new Pen();
        foreach (var place in places)
        {
            var x = place.Key;
            pen.Ring(x, height / 2, radius);
            foreach (var port in place)
                pen.Line(x, port.Above ? 0 : height, x, height / 2 + (port.Above ? -radius : radius));
            var first = place.First();
            if (first.Conductors == 1)
                pen.Fit(
                    first.Name,
                    x + radius + 0.4,
                    3.1,
                    Poles.Markings.Room(part, first) - radius,
                    Anchor.Start
                );
        }
        return pen.Hanging(height);
    }
}
