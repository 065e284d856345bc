namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Lanes that look the same to every wire that passes them: exchanging two of them changes no crossing, so that only
/// one of their orders need be tried.
/// </summary>
internal static class LaneTwins
{
    /// <summary>For each lane the nearest earlier one that is its twin; -1 for none.</summary>
    public static int[] Of(RoutePlan plan, Lanes all)
    {
        var lanes = all.Members.Count;
        var bound = all.Ordered.SelectMany(p => new[] { p.Left, p.Right }).ToHashSet();
        var shared = plan
            .Risers.GroupBy(r => r.Joint)
            .Where(g => g.Select(r => r.Lane).Distinct().Skip(1).Any())
            .Select(g => g.Key)
            .ToHashSet();
        var looks = new string[lanes];
        for (var lane = 0; lane < lanes; lane++)
            looks[lane] = string.Join(
                ' ',
                plan.Risers.Where(r => r.Lane == lane)
                    .Select(r =>
                        $"{(shared.Contains(r.Joint) ? r.Joint : -1)}:{r.Slot}:{r.From}:{r.To}:{r.ComesDown}{r.IsStraight}"
                    )
                    .Order(StringComparer.Ordinal)
            );
        var earlier = new int[lanes];
        var last = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var lane = 0; lane < lanes; lane++)
        {
            earlier[lane] = -1;
            if (bound.Contains(lane))
                continue;
            earlier[lane] = last.GetValueOrDefault(looks[lane], -1);
            last[looks[lane]] = lane;
        }
        return earlier;
    }
}
