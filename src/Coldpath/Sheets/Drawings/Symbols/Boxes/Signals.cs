using Coldpath.Sheets.Drawings.Symbols.Poles;

namespace Coldpath.Sheets.Drawings.Symbols.Boxes;

/// <summary>A lamp or a horn between two lines of a power sheet.</summary>
internal static class Signals
{
    /// <summary>Null unless one port stands above the other.</summary>
    public static Symbol? Of(PowerPart part)
    {
        if (
            part.Ports.Count != 2
            || part.Ports[0].X != part.Ports[1].X
            || part.Ports[0].Above == part.Ports[1].Above
        )
            return null;
        var (x, pen) = (part.Ports[0].X, new Pen());
        const double height = 12.5;
        pen.Line(x, 0, x, 3.75).Line(x, 8.75, x, height).Ring(x, 6.25, 2.5);
        if (part.Device.Blueprint.Kind.Symbol == "lamp")
            pen.Line(x - 1.768, 4.482, x + 1.768, 8.018).Line(x - 1.768, 8.018, x + 1.768, 4.482);
        else
            pen.Text("H", x, 7.2, 2.5);
        Markings.Beside(pen, part, height);
        return pen.Hanging(height);
    }
}
