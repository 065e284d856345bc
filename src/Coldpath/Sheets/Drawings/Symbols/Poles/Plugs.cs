namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>A socket's contact above, as a bow, and the plug's pin below it.</summary>
internal static class Plugs
{
    private const double Height = 7.5;

    /// <param name="isIn">The pin stands in the bow.</param>
    public static Sign Of(bool isIn)
    {
        var tip = isIn ? 2.75 : 4.75;
        return new(
            Height,
            (pen, x, y) =>
                pen.Line(x, y, x, y + 2)
                    .Arc(x, y + 3.5, 1.5, 180, 180)
                    .Solid(
                        x - 0.5,
                        y + tip,
                        x + 0.5,
                        y + tip,
                        x + 0.5,
                        y + tip + 1.75,
                        x - 0.5,
                        y + tip + 1.75
                    )
                    .Line(x, y + tip + 1.75, x, y + Height),
            new At(-0.5, tip + 1)
        );
    }
}
