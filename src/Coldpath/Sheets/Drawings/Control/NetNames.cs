namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Where in the rungs the names of nets are lettered over the wire.</summary>
internal sealed class NetNames
{
    private readonly LadderFacts facts;
    private readonly HashSet<RungPiece> behind = new(ReferenceEqualityComparer.Instance);

    public NetNames(LadderFacts facts)
    {
        this.facts = facts;
        foreach (var rung in facts.Rungs)
            Choose(rung);
    }

    /// <summary>Whether the net is named that lies behind a piece, before the next one in its row.</summary>
    public bool AreBehind(RungPiece piece) => behind.Contains(piece);

    /// <summary>
    /// A knot bears its name once in each rung, where it has a wire number or is drawn in several places; not where a
    /// node in the rung, a flag or a rail names it.
    /// </summary>
    private void Choose(Rung rung)
    {
        var plan = facts.Plans[rung.Index];
        var named = rung.Leaves.OfType<RungNode>().Select(n => facts.Knots.Of(n.At)).ToHashSet();
        named.UnionWith(Flagged(rung).Select(p => facts.Knots.Of(p.In)));
        if (plan.From is { Givers.Count: > 0 })
            named.Add(facts.Knots.Of(rung.Start!.Out));
        foreach (var piece in Gaps(rung))
        {
            var knot = facts.Knots.Of(piece.Out);
            if (Wants(knot) && named.Add(knot))
                behind.Add(piece);
        }
    }

    /// <summary>Terminals that are drawn elsewhere: what refers to them stands on their knot.</summary>
    private IEnumerable<RungPart> Flagged(Rung rung) =>
        rung.Leaves.OfType<RungPart>().Where(p => !p.IsThrough && facts.Where.DrawnBy(p).Count == 0);

    private bool Wants(int knot) =>
        facts.Wires.NameOf(facts.Knots.NetOf(knot)) is not null || facts.Islands.Elsewhere(knot).Count > 0;

    /// <summary>Pieces that something stands behind, in the same row.</summary>
    private static IEnumerable<RungPiece> Gaps(Rung rung)
    {
        var row = new[] { rung.Start }.Concat(rung.Body).Append(rung.End).OfType<RungPiece>().ToList();
        return row.SkipLast(1).Concat(row.SelectMany(GapsIn));
    }

    private static IEnumerable<RungPiece> GapsIn(RungPiece piece) =>
        piece switch
        {
            RungRow row => row.Pieces.SkipLast(1).Concat(row.Pieces.SelectMany(GapsIn)),
            RungFork fork => fork.Branches.SelectMany(GapsIn),
            _ => [],
        };
}
