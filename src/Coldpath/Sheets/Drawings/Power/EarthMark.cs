namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Three strokes at the end of a wire; beside the wire when that goes on.</summary>
internal static class EarthMark
{
    private const double Aside = 5;

    /// <param name="y">Where the wire to earth ends.</param>
    /// <param name="down">1; -1 where the wire comes from below.</param>
    public static IReadOnlyList<Shape> Of(Stub stub, double x, double y, int down)
    {
        var at = stub.Ends ? x : x - Aside / 2;
        var shapes = new List<Shape>();
        if (!stub.Ends)
        {
            shapes.Add(new Polyline([new(x, y - down * 2.5), new(at, y - down * 2.5), new(at, y)], Ink.Line));
            shapes.Add(new Ring(new(x, y - down * 2.5), 0.6, Ink.Line, Filled: true));
        }
        for (var i = 0; i < 3; i++)
            shapes.Add(
                new Polyline(
                    [new(at - 2 + i * 0.6, y + down * i * 0.8), new(at + 2 - i * 0.6, y + down * i * 0.8)],
                    Ink.Line
                )
            );
        return shapes;
    }
}
