namespace Coldpath.Sheets.Drawings.Control;

/// <summary>The column in which the coils and other loads of a section stand, in front of the right rail.</summary>
/// <param name="Centre">Millimetres from the left.</param>
internal sealed record LoadColumn(double Centre)
{
    /// <param name="rungs">Unfolded rungs of the section.</param>
    public static LoadColumn Of(IEnumerable<RungPieces> rungs, LadderFrame frame)
    {
        var loaded = rungs.Where(r => r.Load is not null).ToList();
        var room = (frame.Right - frame.Left) / 4;
        var tail = loaded.Select(r => r.Tail).Where(t => t <= room).Append(0).Max();
        var load = loaded.Select(r => r.Pieces[r.Load!.Value]).OfType<LaidCell>().Select(c => c.Width);
        return new(frame.Right - 2 - tail - (load.Where(w => w <= room).Append(20).Max() / 2));
    }

    /// <summary>A rung's pieces with their places along the sheet, in more than one row where they do not fit in one.</summary>
    /// <param name="start">Where the first row may begin.</param>
    /// <param name="edge">Where rows must end.</param>
    public LaidRows Place(RungPieces pieces, RungDrafting drafting, double start, double edge)
    {
        var rows = drafting.Rows(pieces.Pieces, edge - start);
        var load = pieces.Load is { } i ? pieces.Pieces[i] : null;
        var placed = rows.Select(r => Place(r, load, start, edge)).ToList();
        return LaidRows.Of(placed, pieces.Pieces[0].Into, pieces.Pieces[^1].OutOf);
    }

    private LaidRow Place(IReadOnlyList<Laid> row, Laid? load, double start, double edge)
    {
        var at = load is null ? row.Count : row.TakeWhile(p => !ReferenceEquals(p, load)).Count();
        var head = row.Take(at).Sum(p => p.Width);
        var rest = row.Skip(at).Sum(p => p.Width);
        var x = at < row.Count ? Math.Min(Centre - (row[at].Width / 2), edge - rest) : 0;
        var placed = new List<(double, Laid)>();
        var next = start;
        for (var i = 0; i < row.Count; i++)
        {
            if (i == at)
                next = Math.Max(x, start + head);
            placed.Add((next, row[i]));
            next += row[i].Width;
        }
        return new(placed);
    }
}
