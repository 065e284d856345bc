namespace Coldpath.Circuit.Diagrams;

/// <summary>The sets of a family over the levels 0, 1, 2 and so on, best first.</summary>
/// <param name="table">Where the family lives.</param>
/// <param name="prices">The cost of each level in a set.</param>
internal sealed class CheapestSets(DiagramTable table, long[] prices)
{
    private readonly Dictionary<Diagram, long?> cheapest = new()
    {
        [Diagram.True] = 0,
        [Diagram.False] = null,
    };

    /// <summary>Rising levels in each.</summary>
    public IEnumerable<int[]> Of(Diagram family)
    {
        var open = new PriorityQueue<Partial, Partial>(Comparer<Partial>.Create(Partial.Compare));
        Push(family, 0, 0, []);
        while (open.TryDequeue(out var partial, out _))
        {
            if (partial.At == prices.Length)
            {
                yield return partial.Chosen;
                continue;
            }
            var (level, rest) = (partial.At, partial.Rest);
            var tested = table.Level(rest) == level;
            Push(tested ? table.Low(rest) : rest, level + 1, partial.Spent, partial.Chosen);
            Push(
                tested ? table.High(rest) : rest,
                level + 1,
                partial.Spent + prices[level],
                [.. partial.Chosen, level]
            );
        }

        void Push(Diagram rest, int at, long spent, int[] chosen)
        {
            if (Cheapest(rest) is not { } least)
                return;
            var partial = new Partial(rest, at, spent, chosen, spent + least);
            open.Enqueue(partial, partial);
        }
    }

    /// <summary>The least cost of a set of the family; null when it has none.</summary>
    private long? Cheapest(Diagram family)
    {
        if (cheapest.TryGetValue(family, out var least))
            return least;
        var without = Cheapest(table.Low(family));
        var with = Cheapest(table.High(family)) + prices[table.Level(family)];
        least = without is null || with < without ? with : without;
        cheapest.Add(family, least);
        return least;
    }

    /// <summary>A set that is decided for the levels below <paramref name="At"/>.</summary>
    /// <param name="Rest">The family of what may follow.</param>
    /// <param name="At">The next level to decide.</param>
    /// <param name="Spent">What the chosen levels cost.</param>
    /// <param name="Chosen">Levels in the set.</param>
    /// <param name="Total">The least it can cost in the end.</param>
    private sealed record Partial(Diagram Rest, int At, long Spent, int[] Chosen, long Total)
    {
        public static int Compare(Partial a, Partial b)
        {
            var byCost = a.Total.CompareTo(b.Total);
            if (byCost != 0)
                return byCost;
            var common = Math.Min(a.Chosen.Length, b.Chosen.Length);
            for (var i = 0; i < common; i++)
                if (a.Chosen[i] != b.Chosen[i])
                    return a.Chosen[i].CompareTo(b.Chosen[i]);
            // A shorter one may still go on to a smaller set, so it is opened first.
            return a.Chosen.Length != b.Chosen.Length
                ? a.Chosen.Length.CompareTo(b.Chosen.Length)
                : b.At.CompareTo(a.At);
        }
    }
}
