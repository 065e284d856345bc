namespace Coldpath.Wiring.Failures;

/// <summary>
/// A panel cut into searches in each of which only a few parts may fail. Together they cover every combination of so
/// many failures as are allowed; each is not much larger than the search without any.
/// </summary>
public static class FailureParts
{
    /// <summary>Failures in a group: fewer repeat the panel more often, more weigh on each other.</summary>
    private const int GroupSize = 8;

    /// <param name="netlist">The panel with its kinds' failures.</param>
    /// <param name="most">How many failures may happen: 0 to 2.</param>
    /// <param name="groupSize">How many failures go together.</param>
    /// <returns>At least one netlist; the same failure may be in several.</returns>
    public static IEnumerable<Netlist> Of(Netlist netlist, int most, int groupSize = GroupSize)
    {
        var groups = Groups(netlist, groupSize).Select(g => g.Names).ToArray();
        if (most == 0 || groups.Length == 0)
            return [netlist.WithFailures(new HashSet<string>())];
        if (most == 1 || groups.Length == 1)
            return groups.Select(group => netlist.WithFailures(group.ToHashSet()));
        return from one in Enumerable.Range(0, groups.Length)
            from other in Enumerable.Range(one + 1, groups.Length - one - 1)
            select netlist.WithFailures(groups[one].Concat(groups[other]).ToHashSet());
    }

    /// <summary>Those in which one failure may happen, each of one sort: most questions are of one sort.</summary>
    /// <returns>None for a panel in which nothing can fail.</returns>
    public static IEnumerable<(FailureSort Sort, Netlist Part)> OfOneSort(Netlist netlist) =>
        Groups(netlist, GroupSize).Select(g => (g.Sort, netlist.WithFailures(g.Names.ToHashSet())));

    /// <summary>Parts that weld or jam come first: of several failures of a device the likeliest is told.</summary>
    private static IEnumerable<(FailureSort Sort, string[] Names)> Groups(Netlist netlist, int groupSize) =>
        netlist
            .DifferentFailures()
            .GroupBy(f => f.Sort, f => f.Variable.Name)
            .OrderBy(sort => sort.Key)
            .SelectMany(sort => sort.Chunk(groupSize).Select(names => (sort.Key, names)));
}
