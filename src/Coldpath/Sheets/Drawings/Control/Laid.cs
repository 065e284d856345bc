namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// A piece of a rung with its size, in millimetres from where its baseline begins: it needs the given width, and room
/// above and below the baseline.
/// </summary>
/// <param name="Into">The knot at its beginning.</param>
/// <param name="OutOf">The knot at its end.</param>
internal abstract record Laid(double Width, double Up, double Down, int Into, int OutOf)
{
    /// <summary>Where a wire comes in; null where none does.</summary>
    public abstract At? In { get; }

    /// <summary>Where a wire goes on; null where none does.</summary>
    public abstract At? Out { get; }

    public abstract void Draw(Pen pen, At at);
}

/// <summary>One symbol, flag or name with its letters.</summary>
/// <param name="Left">Where its wire comes in on the baseline; null where none does.</param>
/// <param name="Right">Where its wire goes on; null where none does.</param>
/// <param name="IsWire">Nothing but a wire from left to right under its letters.</param>
/// <param name="Joined">Terminals with the knots they lie on.</param>
internal sealed record LaidCell(
    double Width,
    double Up,
    double Down,
    int Into,
    int OutOf,
    double? Left,
    double? Right,
    bool IsWire,
    IReadOnlyList<Noted> Figures,
    IReadOnlyList<(string Terminal, int Knot)> Joined
) : Laid(Width, Up, Down, Into, OutOf)
{
    public override At? In => Left is { } x ? new At(x, 0) : null;

    public override At? Out => Right is { } x ? new At(x, 0) : null;

    public override void Draw(Pen pen, At at)
    {
        foreach (var figure in Figures)
            pen.Add(figure.Moved(at.X, at.Y));
        foreach (var (terminal, knot) in Joined)
            pen.Join(knot, terminal);
        if (IsWire)
            pen.Wire(Into, at.Plus(Left ?? 0, 0), at.Plus(Right ?? 0, 0));
    }
}

/// <summary>Pieces side by side in rows below each other; from row to row flags lead on.</summary>
internal sealed record LaidRows(
    IReadOnlyList<LaidRow> Rows,
    double Width,
    double Up,
    double Down,
    int Into,
    int OutOf
) : Laid(Width, Up, Down, Into, OutOf)
{
    public const double Gap = 3;

    public override At? In => Rows[0].In;

    public override At? Out => Rows[^1].Out is { } at ? at.Plus(0, Offset(Rows.Count - 1)) : null;

    public static LaidRows Of(IReadOnlyList<LaidRow> rows, int into, int outOf)
    {
        var height = rows.Sum(r => r.Up + r.Down) + (Gap * (rows.Count - 1));
        return new(rows, rows.Max(r => r.Width), rows[0].Up, height - rows[0].Up, into, outOf);
    }

    public override void Draw(Pen pen, At at)
    {
        for (var i = 0; i < Rows.Count; i++)
            Rows[i].Draw(pen, at.Plus(0, Offset(i)));
    }

    private double Offset(int row)
    {
        var y = 0.0;
        for (var i = 0; i < row; i++)
            y += Rows[i].Down + Gap + Rows[i + 1].Up;
        return y;
    }
}

/// <summary>Pieces on one baseline, each with its place along it.</summary>
internal sealed record LaidRow(IReadOnlyList<(double X, Laid Piece)> Pieces)
{
    public double Width { get; } = Pieces.Count == 0 ? 0 : Pieces.Max(p => p.X + p.Piece.Width);
    public double Up { get; } = Pieces.Select(p => p.Piece.Up).Append(0).Max();
    public double Down { get; } = Pieces.Select(p => p.Piece.Down).Append(0).Max();

    public At? In => Pieces is [var (x, first), ..] ? first.In?.Plus(x, 0) : null;

    public At? Out => Pieces is [.., var (x, last)] ? last.Out?.Plus(x, 0) : null;

    /// <summary>One after another from the left.</summary>
    public static LaidRow Packed(IEnumerable<Laid> pieces)
    {
        var placed = new List<(double, Laid)>();
        var x = 0.0;
        foreach (var piece in pieces)
        {
            placed.Add((x, piece));
            x += piece.Width;
        }
        return new(placed);
    }

    public void Draw(Pen pen, At at)
    {
        foreach (var (x, piece) in Pieces)
            piece.Draw(pen, at.Plus(x, 0));
        foreach (var ((x, piece), (nextX, next)) in Pieces.Zip(Pieces.Skip(1)))
            if (piece.Out is { } from && next.In is { } to)
                pen.Wire(next.Into, at.Plus(x + from.X, from.Y), at.Plus(nextX + to.X, to.Y));
    }
}
