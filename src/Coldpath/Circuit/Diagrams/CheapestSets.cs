namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// The sets of a family, best first, taken out one at a time, so that the first few of a huge family cost little: one
/// cost after the other, those of equal cost in the order of a list of levels.
/// </summary>
internal sealed class CheapestSets
{
    private readonly FamilyTable table;
    private readonly int[] listed;
    private readonly Dictionary<int, int> places;
    private readonly Dictionary<int, long> prices;
    private readonly Dictionary<(Family, long), long?> least = [];
    private readonly Dictionary<(Family, long), Family> costing = [];

    /// <param name="table">Where the family lives.</param>
    /// <param name="listed">All levels that a set may hold, in any order.</param>
    /// <param name="cost">Of one level in a set, not negative.</param>
    public CheapestSets(FamilyTable table, IEnumerable<int> listed, Func<int, long> cost)
    {
        this.table = table;
        this.listed = [.. listed.Distinct()];
        places = this.listed.Index().ToDictionary(p => p.Item, p => p.Index);
        prices = this.listed.ToDictionary(level => level, cost);
    }

    /// <summary>Each set in the order of the list.</summary>
    public IEnumerable<IReadOnlyList<int>> Of(Family family)
    {
        for (var cost = Least(family, 0); cost is { } exact; cost = Least(family, exact + 1))
            foreach (var set in InOrder(Costing(family, exact), []))
                yield return set;
    }

    /// <summary>Sets in the order of the list, one that begins another before it.</summary>
    private IEnumerable<int[]> InOrder(Family family, int[] chosen)
    {
        if (table.HasNothing(family))
            yield return chosen;
        while (table.Support(family) is { Count: > 0 } support)
        {
            var first = support.MinBy(level => places[level]);
            foreach (var set in InOrder(table.With(family, first), [.. chosen, first]))
                yield return set;
            family = table.Without(family, first);
        }
    }

    /// <summary>The least cost of a set, of those that cost no less than the bound; null when there is none.</summary>
    private long? Least(Family family, long bound)
    {
        if (family.IsConstant)
            return family == Family.Nothing && bound <= 0 ? 0 : null;
        bound = Math.Max(bound, 0);
        if (!least.TryGetValue((family, bound), out var found))
        {
            var price = prices[table.Level(family)];
            var with = Least(table.High(family), bound - price) + price;
            found = Less(Least(table.Low(family), bound), with);
            least.Add((family, bound), found);
        }
        return found;
    }

    private static long? Less(long? a, long? b) => a is null || b < a ? b : a;

    /// <summary>The sets of just this cost.</summary>
    private Family Costing(Family family, long cost)
    {
        if (Least(family, cost) != cost)
            return Family.None;
        if (family.IsConstant)
            return family;
        if (!costing.TryGetValue((family, cost), out var found))
        {
            var level = table.Level(family);
            var with = Costing(table.High(family), cost - prices[level]);
            found = table.Make(level, Costing(table.Low(family), cost), with);
            costing.Add((family, cost), found);
        }
        return found;
    }
}
