namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Branches below each other between two upright lines, the first one on the baseline.</summary>
/// <param name="OpenIn">No line on the left: each branch begins for itself.</param>
/// <param name="OpenOut">No line on the right.</param>
internal sealed record LaidFork(
    IReadOnlyList<(At At, Laid Piece)> Branches,
    double Width,
    double Up,
    double Down,
    int Into,
    int OutOf,
    bool OpenIn,
    bool OpenOut
) : Laid(Width, Up, Down, Into, OutOf)
{
    /// <summary>What an upright line takes of the width.</summary>
    public const double Column = 5;
    private const double Gap = 2.5;

    public override At? In => OpenIn ? null : new At(Column / 2, 0);

    public override At? Out => OpenOut ? null : new At(Width - (Column / 2), 0);

    public static LaidFork Of(IReadOnlyList<Laid> branches, int into, int outOf, bool openIn, bool openOut)
    {
        var widest = branches.Max(b => b.Width);
        var areAlike = branches.All(b => b is LaidCell or LaidRows { Rows: [{ Pieces.Count: 1 }] });
        var left = openIn ? 0 : Column;
        var placed = new List<(At, Laid)>();
        var y = 0.0;
        foreach (var branch in branches)
        {
            if (placed is [.., var (at, above)])
                y = at.Y + above.Down + Gap + branch.Up;
            placed.Add((new At(left + (areAlike ? (widest - branch.Width) / 2 : 0), y), branch));
        }
        var width = left + widest + (openOut ? 0 : Column);
        return new(placed, width, branches[0].Up, y + branches[^1].Down, into, outOf, openIn, openOut);
    }

    public override void Draw(Pen pen, At at)
    {
        foreach (var (place, piece) in Branches)
            piece.Draw(pen, at.Plus(place.X, place.Y));
        if (In is { } into)
            Upright(pen, Into, at, into.X, Branches.Select(b => b.Piece.In?.Plus(b.At.X, b.At.Y)));
        if (Out is { } outOf)
            Upright(pen, OutOf, at, outOf.X, Branches.Select(b => b.Piece.Out?.Plus(b.At.X, b.At.Y)));
    }

    /// <summary>From the baseline down to the last branch, with a wire to each.</summary>
    private static void Upright(Pen pen, int knot, At at, double x, IEnumerable<At?> ends)
    {
        var joined = ends.OfType<At>().ToList();
        foreach (var end in joined)
            pen.Wire(knot, at.Plus(x, end.Y), at.Plus(end.X, end.Y));
        pen.Upright(knot, at.X + x, [at.Y, .. joined.Select(e => at.Y + e.Y)], meets: at.Y);
    }
}
