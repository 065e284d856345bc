namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The sign of the earth: three strokes at the end of a wire.</summary>
internal static class EarthMark
{
    /// <summary>How far it stands to the left of a wire that goes on.</summary>
    public const double Aside = 2.5;

    /// <param name="x">Where the wire to earth ends.</param>
    /// <param name="y">Where the wire to earth ends.</param>
    /// <param name="down">1; -1 where the wire comes from below.</param>
    public static IReadOnlyList<Shape> Of(double x, double y, int down) =>
        [
            .. Enumerable
                .Range(0, 3)
                .Select(i => new Polyline(
                    [new(x - 2 + i * 0.6, y + down * i * 0.8), new(x + 2 - i * 0.6, y + down * i * 0.8)],
                    Ink.Line
                )),
        ];
}
