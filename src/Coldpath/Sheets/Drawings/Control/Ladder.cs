namespace Coldpath.Sheets.Drawings.Control;

/// <summary>The control circuit, measured, in blocks that are put on one sheet or on several.</summary>
/// <param name="Width">Millimetres; more than asked for where something could not be made narrower.</param>
/// <param name="Blocks">From top to bottom.</param>
/// <param name="Headings">By section.</param>
internal sealed record Ladder(
    double Width,
    IReadOnlyList<LadderBlock> Blocks,
    IReadOnlyList<Heading> Headings,
    Shown Shown
)
{
    /// <summary>Height of blocks below each other with their headings.</summary>
    public double HeightOf(IReadOnlyList<LadderBlock> blocks) =>
        Stacked(blocks) is [.., var (block, y, _)] ? y + block.Height : 0;

    /// <summary>As many blocks to a page as fit, at least one.</summary>
    /// <param name="height">Of a page, in millimetres.</param>
    public IReadOnlyList<IReadOnlyList<LadderBlock>> Paged(double height)
    {
        var pages = new List<List<LadderBlock>>();
        var y = 0.0;
        foreach (var block in Blocks)
        {
            var last = pages is [.., [.., var above]] ? above : null;
            if (last is null || After(last, block, y) + block.Height > height)
            {
                pages.Add([]);
                (last, y) = (null, 0);
            }
            pages[^1].Add(block);
            y = After(last, block, y) + block.Height;
        }
        return pages;
    }

    /// <summary>The figures of each page, from its upper left corner, with references to where things are.</summary>
    /// <param name="pages">Blocks by page, each with its sheet's number.</param>
    /// <param name="sheetOfPower">Number of the sheet that shows a terminal "Q1:2/T1" of the power circuit.</param>
    public IReadOnlyList<IReadOnlyList<Figure>> Assemble(
        IReadOnlyList<(int Sheet, IReadOnlyList<LadderBlock> Blocks)> pages,
        Func<string, int?> sheetOfPower
    )
    {
        var index = IndexOf(pages, sheetOfPower);
        return [.. pages.Select(p => Page(p.Blocks, place => index.Name(place, p.Sheet)))];
    }

    private static SheetIndex IndexOf(
        IReadOnlyList<(int Sheet, IReadOnlyList<LadderBlock> Blocks)> pages,
        Func<string, int?> sheetOfPower
    )
    {
        var rungs = pages
            .SelectMany(p => p.Blocks.SelectMany(b => b.Rungs.Select(r => (Rung: r, p.Sheet))))
            .ToList();
        return new(
            rungs.Where(r => !r.Rung.IsApart).ToDictionary(r => r.Rung.Index, r => r.Sheet),
            rungs
                .Where(r => r.Rung.IsApart)
                .ToDictionary(r => r.Rung.Number, r => r.Sheet, StringComparer.Ordinal),
            sheetOfPower
        );
    }

    private List<Figure> Page(IReadOnlyList<LadderBlock> blocks, Func<Place, string> name)
    {
        var stacked = Stacked(blocks);
        var figures = new List<Figure>();
        foreach (var (block, y, _) in stacked)
            figures.AddRange(block.Wires.Select(w => w.Moved(0, y)));
        foreach (var (block, y, _) in stacked)
            figures.AddRange(block.Figures.Select(f => f.Moved(0, y).Named(name)));
        for (var i = 0; i < stacked.Count; i++)
            if (stacked[i].Heads is { } heads)
            {
                var section = stacked[i].Block.Section;
                var own = stacked.Skip(i).TakeWhile(s => s.Block.Section == section).ToList();
                figures.AddRange(Heading(section, heads, own).Select(f => f.Named(name)));
            }
        return figures;
    }

    private IEnumerable<Noted> Heading(
        int section,
        double y,
        List<(LadderBlock Block, double Y, double? Heads)> own
    ) =>
        Headings[section]
            .Drawn(
                y,
                [.. own.SelectMany(b => b.Block.LeftTaps.Select(t => b.Y + t))],
                [.. own.SelectMany(b => b.Block.RightTaps.Select(t => b.Y + t))],
                net =>
                    own.SelectMany(b => b.Block.Wires.Where(w => w.Net == net).SelectMany(w => w.Terminals)),
                Shown
            );

    /// <summary>Blocks with their places; the first of a section with the place of its heading.</summary>
    private List<(LadderBlock Block, double Y, double? Heads)> Stacked(IReadOnlyList<LadderBlock> blocks)
    {
        var stacked = new List<(LadderBlock, double, double?)>();
        LadderBlock? above = null;
        var bottom = 0.0;
        foreach (var block in blocks)
        {
            var y = After(above, block, bottom);
            double? heads = block.Section == above?.Section ? null : y - Headings[block.Section].Height;
            stacked.Add((block, y, heads));
            (above, bottom) = (block, y + block.Height);
        }
        return stacked;
    }

    /// <summary>Where a block begins below another one that ends there, or at the top of a page.</summary>
    private double After(LadderBlock? above, LadderBlock block, double bottom) =>
        above is null ? Headings[block.Section].Height
        : above.Section == block.Section ? bottom + BlockLayout.Gap
        : bottom + (2 * BlockLayout.Gap) + Headings[block.Section].Height;
}
