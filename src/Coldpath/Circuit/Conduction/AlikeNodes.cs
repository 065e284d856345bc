using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Nodes of an undirected guarded graph from which the same ways go on to a target: whatever links are there, one reaches it
/// exactly when the other does (bisimulation; the partition is refined until it is stable, P. Kanellakis and S. Smolka,
/// Information and Computation 86, 1990). The three phases of a mesh of three-pole switches come to one.
/// </summary>
internal static class AlikeNodes
{
    /// <summary>For each node the number of its class.</summary>
    /// <param name="table">Where the conditions live.</param>
    /// <param name="nodes">How many there are.</param>
    /// <param name="links">Their ends and conditions.</param>
    /// <param name="target">In a class of its own.</param>
    public static int[] Classes(
        DiagramTable table,
        int nodes,
        IReadOnlyCollection<(int A, int B, Diagram Condition)> links,
        int target
    )
    {
        var beside = links
            .Concat(links.Select(l => (A: l.B, B: l.A, l.Condition)))
            .ToLookup(l => l.A, l => (l.B, l.Condition));
        int[] classes = [.. Enumerable.Range(0, nodes).Select(node => node == target ? 1 : 0)];
        for (var (count, before) = (2, 0); count > before; )
        {
            var names = new Dictionary<string, int>();
            classes = [.. Enumerable.Range(0, nodes).Select(node => Name(names, Onward(node)))];
            (count, before) = (names.Count, count);
        }
        return classes;

        string Onward(int node) =>
            string.Join(
                ' ',
                beside[node]
                    .GroupBy(l => classes[l.B], l => l.Condition)
                    .Where(c => c.Key != classes[node])
                    .OrderBy(c => c.Key)
                    .Select(c => $"{c.Key}:{table.AnyOf(c).Edge}")
                    .Prepend($"{classes[node]}")
            );
    }

    private static int Name(Dictionary<string, int> names, string onward)
    {
        if (!names.TryGetValue(onward, out var name))
            names.Add(onward, name = names.Count);
        return name;
    }
}
