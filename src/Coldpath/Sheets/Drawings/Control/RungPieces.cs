namespace Coldpath.Sheets.Drawings.Control;

/// <summary>What is laid out along a rung: its own beginning, its body, its own end.</summary>
/// <param name="Pieces">From left to right; what a rail or a node drawn upright stands for is not among them.</param>
/// <param name="Load">Index of the last piece that holds a load; null when none does.</param>
internal sealed record RungPieces(IReadOnlyList<Laid> Pieces, int? Load)
{
    public double Width => Pieces.Sum(p => p.Width);

    /// <summary>What stands on the return side of the load.</summary>
    public double Tail => Load is { } load ? Pieces.Skip(load + 1).Sum(p => p.Width) : 0;

    public static RungPieces Of(RungPlan plan, RungDrafting drafting, double limit)
    {
        var (rung, pieces) = (plan.Rung, new List<Laid>());
        int? load = null;
        if (rung.Start is { } start && !plan.FromRail && plan.From is not { IsDrawn: true })
            pieces.Add(drafting.End(rung, start, begins: true));
        if (rung.Body.Count == 0)
            pieces.Add(Flags.Wire(rung.Start?.Out ?? rung.End?.In ?? 0));
        foreach (var (laid, holdsLoad) in drafting.Body(rung, limit))
        {
            load = holdsLoad ? pieces.Count : load;
            pieces.Add(laid);
        }
        if (rung.End is { } end && !plan.ToRail)
            if (plan.To is not { IsDrawn: true } stem)
                pieces.Add(drafting.End(rung, end, begins: false));
            else if (stem.Givers[0] == rung.Index)
                pieces.Add(drafting.Over((RungNode)end));
        return new(pieces, load);
    }
}
