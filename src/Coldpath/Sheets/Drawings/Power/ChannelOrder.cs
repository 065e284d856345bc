using System.Numerics;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Puts the trunks of a channel above each other so that wires cross as rarely as possible: exactly for up to twelve
/// that touch each other, by exchanging neighbours for more.
/// </summary>
internal static class ChannelOrder
{
    private const int Exact = 12;
    private const int Forbidden = 1_000_000;

    /// <summary>The track of each bar from the top, and how many tracks there are.</summary>
    public static (int[] Tracks, int Count) Of(
        IReadOnlyList<Bar> bars,
        IReadOnlyList<(int Upper, int Lower)> above
    )
    {
        var tracks = new int[bars.Count];
        var count = 0;
        foreach (var group in Touching(bars))
        {
            var order = Ordered(group, bars, above);
            for (var i = 0; i < order.Count; i++)
            {
                var lowest = -1;
                for (var j = 0; j < i; j++)
                    if (bars[order[j]].Touches(bars[order[i]]))
                        lowest = Math.Max(lowest, tracks[order[j]]);
                tracks[order[i]] = lowest + 1;
                count = Math.Max(count, lowest + 2);
            }
        }
        return (tracks, count);
    }

    /// <summary>Bars that overlap, directly or through others, from left to right.</summary>
    private static IEnumerable<IReadOnlyList<int>> Touching(IReadOnlyList<Bar> bars)
    {
        var group = new List<int>();
        var end = int.MinValue;
        foreach (var i in Enumerable.Range(0, bars.Count).OrderBy(i => bars[i].From).ThenBy(i => i))
        {
            if (group.Count > 0 && bars[i].From > end)
            {
                yield return group;
                group = [];
            }
            group.Add(i);
            end = Math.Max(end, bars[i].To);
        }
        if (group.Count > 0)
            yield return group;
    }

    private static IReadOnlyList<int> Ordered(
        IReadOnlyList<int> group,
        IReadOnlyList<Bar> bars,
        IReadOnlyList<(int Upper, int Lower)> above
    )
    {
        if (group.Count == 1)
            return group;
        var n = group.Count;
        var cost = new int[n, n];
        for (var i = 0; i < n; i++)
        for (var j = 0; j < n; j++)
            if (i != j)
                cost[i, j] = bars[group[i]].CrossingsAbove(bars[group[j]]);
        foreach (var (upper, lower) in above)
            if (Place(group, upper) is var i and >= 0 && Place(group, lower) is var j and >= 0)
                cost[j, i] += Forbidden;
        IReadOnlyList<int> order = n <= Exact ? Best(cost, n) : Good(cost, n);
        return [.. order.Select(i => group[i])];
    }

    private static int Place(IReadOnlyList<int> group, int bar)
    {
        for (var i = 0; i < group.Count; i++)
            if (group[i] == bar)
                return i;
        return -1;
    }

    /// <summary>Over all sets that may lie on top: the least cost of each, and what comes last in it.</summary>
    private static int[] Best(int[,] cost, int n)
    {
        var least = new int[1 << n];
        var last = new int[1 << n];
        for (var set = 1; set < 1 << n; set++)
        {
            least[set] = int.MaxValue;
            for (var rest = set; rest != 0; rest &= rest - 1)
            {
                var lowest = BitOperations.TrailingZeroCount(rest);
                var others = set & ~(1 << lowest);
                var sum = least[others];
                for (var o = others; o != 0; o &= o - 1)
                    sum += cost[BitOperations.TrailingZeroCount(o), lowest];
                if (sum <= least[set])
                    (least[set], last[set]) = (sum, lowest);
            }
        }
        var order = new int[n];
        for (var (set, i) = ((1 << n) - 1, n - 1); i >= 0; i--)
        {
            order[i] = last[set];
            set &= ~(1 << last[set]);
        }
        return order;
    }

    /// <summary>Each is put where it costs least among those placed, then neighbours are exchanged while that helps.</summary>
    private static List<int> Good(int[,] cost, int n)
    {
        var order = new List<int>();
        foreach (var next in UppersFirst(cost, n))
        {
            var (best, at) = (long.MaxValue, 0);
            for (var place = 0; place <= order.Count; place++)
            {
                long sum = 0;
                for (var i = 0; i < order.Count; i++)
                    sum += i < place ? cost[order[i], next] : cost[next, order[i]];
                if (sum < best)
                    (best, at) = (sum, place);
            }
            order.Insert(at, next);
        }
        for (var (changed, rounds) = (true, 0); changed && rounds < n; rounds++)
        {
            changed = false;
            for (var i = 0; i + 1 < n; i++)
                if (cost[order[i + 1], order[i]] < cost[order[i], order[i + 1]])
                {
                    (order[i], order[i + 1]) = (order[i + 1], order[i]);
                    changed = true;
                }
        }
        return order;
    }

    /// <summary>In this order a place that breaks no rule is always left.</summary>
    private static List<int> UppersFirst(int[,] cost, int n)
    {
        var done = new List<int>();
        var left = Enumerable.Range(0, n).ToList();
        while (left.Count > 0)
        {
            var free = left.FindIndex(i => !left.Exists(j => j != i && cost[i, j] >= Forbidden));
            done.Add(left[Math.Max(free, 0)]);
            left.RemoveAt(Math.Max(free, 0));
        }
        return done;
    }
}
