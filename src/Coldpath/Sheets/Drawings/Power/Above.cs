namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Which trunk of a channel must lie above which.</summary>
internal static class Above
{
    /// <summary>Pairs of indices, upper first.</summary>
    public static IReadOnlyList<(int Upper, int Lower)> Of(IReadOnlyList<Trunk> trunks)
    {
        var coming = new Dictionary<(int, int), int>();
        for (var i = 0; i < trunks.Count; i++)
            foreach (var riser in trunks[i].Risers.Where(r => r is { ComesDown: true, IsStraight: false }))
                coming[(riser.Lane, riser.Slot)] = i;
        return
        [
            .. from i in Enumerable.Range(0, trunks.Count)
            from riser in trunks[i].Risers
            where riser is { ComesDown: false, IsStraight: false }
            let upper = coming.GetValueOrDefault((riser.Lane, riser.Slot), i)
            where upper != i
            select (upper, i),
        ];
    }

    /// <summary>A trunk that stands in a ring of such pairs and can be cut; null when there is no ring.</summary>
    public static Trunk? Ring(IReadOnlyList<Trunk> trunks)
    {
        var pairs = Of(trunks);
        var open = Enumerable.Range(0, trunks.Count).ToHashSet();
        // Whatever has nothing above it, or nothing below it, is in no ring.
        while (Loose(open, pairs) is { Count: > 0 } loose)
            open.ExceptWith(loose);
        return open.Count == 0 ? null : trunks[open.Min()];
    }

    private static List<int> Loose(IReadOnlySet<int> open, IReadOnlyList<(int Upper, int Lower)> pairs)
    {
        var inside = pairs.Where(p => open.Contains(p.Upper) && open.Contains(p.Lower)).ToList();
        var (uppers, lowers) = (
            inside.Select(p => p.Upper).ToHashSet(),
            inside.Select(p => p.Lower).ToHashSet()
        );
        return [.. open.Where(i => !uppers.Contains(i) || !lowers.Contains(i))];
    }
}
