namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>Where wires of two nets cross on a sheet.</summary>
internal static class Crossings
{
    public static bool Any(IReadOnlyList<Figure> drawn)
    {
        var pieces = drawn.Where(f => f.Kind == FigureKind.Wire).SelectMany(Pieces).ToArray();
        var upright = pieces.Where(p => p.From.X == p.To.X).ToArray();
        return pieces.Where(p => p.From.Y == p.To.Y).Any(level => upright.Any(other => Cross(level, other)));
    }

    private static bool Cross(Piece level, Piece upright) =>
        level.Net != upright.Net
        && Between(upright.From.X, level.From.X, level.To.X)
        && Between(level.From.Y, upright.From.Y, upright.To.Y);

    private static bool Between(double at, double one, double other) =>
        at > Math.Min(one, other) && at < Math.Max(one, other);

    private static IEnumerable<Piece> Pieces(Figure wire) =>
        wire
            .Shapes.OfType<Polyline>()
            .SelectMany(line => line.Points.Zip(line.Points.Skip(1), (a, b) => new Piece(wire.Net, a, b)));

    private sealed record Piece(string? Net, At From, At To);
}
