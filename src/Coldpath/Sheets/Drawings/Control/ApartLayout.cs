namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Parts that no rung passes, side by side in lines: first those that wire lists join, then what is not wired.</summary>
internal static class ApartLayout
{
    /// <param name="section">Index of the first of the two sections.</param>
    public static IEnumerable<LadderBlock> Of(
        LadderFacts facts,
        RungDrafting drafting,
        LadderFrame frame,
        int section
    )
    {
        var spare = facts.Apart.ToLookup(r => r.IsSpare);
        var wired = spare[false].Select(r => (r, drafting.Apart(r)));
        var unwired = spare[true].Select(r => (r, drafting.Apart(r))).Concat(Bare(facts));
        return Lines([.. wired], facts, frame, section)
            .Concat(Lines([.. unwired], facts, frame, section + 1));
    }

    public static IReadOnlyList<Heading> Headings { get; } =
    [new("in no rung", null, null), new("not wired", null, null)];

    /// <summary>
    /// Devices without any terminal in use: a selector of which no contact is wired, a linkage whose members have no
    /// coil on this sheet.
    /// </summary>
    private static IEnumerable<(Rung, LaidRow)> Bare(LadderFacts facts) =>
        facts
            .Panel.Devices.Where(d => d.Terminals.Count == 0 && !facts.Coils.IsNoted(d))
            .Select(d =>
                (new Rung(-1, d.Tag, d.Span, null, [], null), LaidRow.Packed([BareCell.Of(d, facts)]))
            );

    private static IEnumerable<LadderBlock> Lines(
        IReadOnlyList<(Rung Rung, LaidRow Row)> parts,
        LadderFacts facts,
        LadderFrame frame,
        int section
    )
    {
        var line = new List<(Rung Rung, LaidRow Row, double X)>();
        var x = 0.0;
        foreach (var (part, row) in parts)
        {
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
