namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A straight piece of wire, upright or level.</summary>
internal readonly record struct Piece(double X1, double Y1, double X2, double Y2)
{
    private const double Dot = 0.75;
    private const double Same = 0.01;

    public static Piece Upright(double x, double y1, double y2) =>
        new(x, Math.Min(y1, y2), x, Math.Max(y1, y2));

    public static Piece Level(double y, double x1, double x2) => new(x1, y, x2, y);

    private bool IsUpright => X1 == X2;

    /// <summary>The pieces of one joint as lines, with a dot wherever three or more ways meet.</summary>
    public static IEnumerable<Shape> Shapes(IReadOnlyList<Piece> pieces)
    {
        foreach (var piece in pieces)
            yield return new Polyline([new(piece.X1, piece.Y1), new(piece.X2, piece.Y2)], Ink.Line);
        foreach (var level in pieces.Where(p => !p.IsUpright))
        foreach (var upright in pieces.Where(p => p.IsUpright))
            if (Ways(level, upright) >= 3)
                yield return new Ring(new(upright.X1, level.Y1), Dot, Ink.Line, Filled: true);
    }

    /// <summary>In how many directions wire leads from where the two meet; 0 where they do not.</summary>
    private static int Ways(Piece level, Piece upright)
    {
        var (x, y) = (upright.X1, level.Y1);
        if (x < level.X1 - Same || x > level.X2 + Same || y < upright.Y1 - Same || y > upright.Y2 + Same)
            return 0;
        return Count(level.X1 < x - Same)
            + Count(level.X2 > x + Same)
            + Count(upright.Y1 < y - Same)
            + Count(upright.Y2 > y + Same);
    }

    private static int Count(bool there) => there ? 1 : 0;
}
