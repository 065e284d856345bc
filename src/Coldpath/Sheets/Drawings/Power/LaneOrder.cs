namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// The order of lanes in which wires cross least, ways in declared order: by trying all orders of up to seven lanes. For
/// more, what branches off further down stands nearer to its lane.
/// </summary>
internal static class LaneOrder
{
    public const int Exhaustive = 7;

    public static Board Best(RoutePlan plan, Lanes lanes, int channels)
    {
        var natural = Natural(lanes, plan);
        if (lanes.Members.Count > Exhaustive)
            return new(plan, natural, channels);
        var best = default(Board);
        var twins = LaneTwins.Of(plan, lanes);
        foreach (
            var order in Orders(natural, [.. lanes.Ordered, .. TwinsInOrder(twins)])
                .Where(lanes.AreSideBySide)
        )
        {
            var board = new Board(plan, order, channels);
            if (best is null || (board.Crossings, board.Length).CompareTo((best.Crossings, best.Length)) < 0)
                best = board;
        }
        return best ?? new(plan, natural, channels);
    }

    private static IEnumerable<(int Left, int Right)> TwinsInOrder(int[] twins) =>
        Enumerable.Range(0, twins.Length).Where(l => twins[l] >= 0).Select(l => (twins[l], l));

    /// <summary>All orders that keep the pairs, those near to the given one first.</summary>
    public static IEnumerable<IReadOnlyList<int>> Orders(
        IReadOnlyList<int> lanes,
        IReadOnlyList<(int Left, int Right)> ordered
    )
    {
        if (lanes.Count == 0)
        {
            yield return [];
            yield break;
        }
        foreach (var first in lanes)
            if (!ordered.Any(p => p.Right == first && lanes.Contains(p.Left) && p.Left != first))
                foreach (var rest in Orders([.. lanes.Where(l => l != first)], ordered))
                    yield return [first, .. rest];
    }

    /// <summary>Each lane followed by those that branch off it, the lowest first.</summary>
    private static List<int> Natural(Lanes lanes, RoutePlan plan)
    {
        var ways = lanes.Ordered.Select(p => p.Right).ToHashSet();
        var children = Parents(lanes, plan)
            .Select((p, lane) => (p.Parent, p.Channel, Lane: lane))
            .ToLookup(p => p.Parent);
        var order = new List<int>();
        var stack = new Stack<int>(children[-1].Select(c => c.Lane).Reverse());
        while (stack.TryPop(out var lane))
        {
            order.Add(lane);
            foreach (
                var child in children[lane]
                    .OrderBy(c => ways.Contains(c.Lane))
                    .ThenBy(c => c.Channel)
                    .ThenByDescending(c => c.Lane)
            )
                stack.Push(child.Lane);
        }
        return order;
    }

    /// <summary>The lane that each hangs from, an earlier one, and in which channel; -1 for none.</summary>
    private static (int Parent, int Channel)[] Parents(Lanes lanes, RoutePlan plan)
    {
        var parents = lanes.Members.Select(_ => (Parent: -1, Channel: 0)).ToArray();
        foreach (var trunk in plan.Trunks.OrderBy(t => t.Channel))
        {
            var first = trunk.Risers.Min(r => r.Lane);
            foreach (var riser in trunk.Risers)
                if (riser.Lane > first && parents[riser.Lane].Parent < 0)
                    parents[riser.Lane] = (first, trunk.Channel);
        }
        return parents;
    }
}
