namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>Bus bars: one for each terminal name, with a dot at each tap.</summary>
internal static class Bars
{
    public static Symbol Of(PowerPart part)
    {
        var names = part.Ports.Select(p => p.Name).Distinct().ToList();
        var height = 5 + Pen.M * (names.Count + 1);
        var pen = new Pen();
        var (left, right) = (part.Ports.Min(p => p.X) - 2.5, part.Ports.Max(p => p.X) + 2.5);
        foreach (var (i, name) in names.Index())
        {
            var y = 5 + Pen.M * i;
            pen.Stroke(Ink.Heavy, left, y, right, y);
            pen.Fit(Named(part, name), left - 0.5, y + 0.6, 8, Anchor.End);
            foreach (var port in part.Ports.Where(p => p.Name == name))
            {
                pen.Line(port.X, port.Above ? 0 : height, port.X, y);
                pen.Dot(port.X, y);
            }
        }
        Poles.Strokes.Across(pen, part);
        return pen.Hanging(height);
    }

    private static string Named(PowerPart part, string name) =>
        part.Ports.First(p => p.Name == name).Conductors > 1 ? "" : name;
}
