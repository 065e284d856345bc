namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Parts that no rung passes, side by side in lines: first those that wire lists join, then what is not wired.</summary>
internal static class ApartLayout
{
    /// <param name="section">Index of the first of the two sections.</param>
    public static IEnumerable<LadderBlock> Of(
        LadderFacts facts,
        Drafting drafting,
        LadderFrame frame,
        int section
    )
    {
        var spare = facts.Apart.ToLookup(r => r.IsSpare);
        return Lines([.. spare[false]], facts, drafting, frame, section)
            .Concat(Lines([.. spare[true]], facts, drafting, frame, section + 1));
    }

    public static IEnumerable<Heading> Headings(LadderFrame frame) =>
        [new("in no rung", null, null, frame.Width), new("not wired", null, null, frame.Width)];

    private static IEnumerable<LadderBlock> Lines(
        IReadOnlyList<Rung> parts,
        LadderFacts facts,
        Drafting drafting,
        LadderFrame frame,
        int section
    )
    {
        var line = new List<(Rung Rung, LaidRow Row, double X)>();
        var x = 0.0;
        foreach (var part in parts)
        {
            var row = drafting.Apart(part);
            var width = Cells.OnGrid(row.Width);
            if (line.Count > 0 && x + width > frame.Width)
            {
                yield return Block(line, facts, frame, section);
                (line, x) = ([], 0);
            }
            line.Add((part, row, x));
            x += width;
        }
        if (line.Count > 0)
            yield return Block(line, facts, frame, section);
    }

    private static LadderBlock Block(
        IReadOnlyList<(Rung Rung, LaidRow Row, double X)> line,
        LadderFacts facts,
        LadderFrame frame,
        int section
    )
    {
        var pen = new Pen(facts.Knots);
        var up = line.Max(l => l.Row.Up);
        foreach (var (_, row, x) in line)
            row.Draw(pen, new(x, up));
        return new()
        {
            Section = section,
            Height = up + line.Max(l => l.Row.Down),
            Overflow = line.Max(l => l.X + l.Row.Width) - frame.Width,
            Figures = pen.Figures,
            Wires = [.. pen.Wires.Where(w => w.Shapes.Count > 0).Select(w => w.ToFigure(facts.Shown))],
            Rungs = [.. line.Select(l => l.Rung)],
        };
    }
}
