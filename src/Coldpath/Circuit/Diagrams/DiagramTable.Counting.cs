using System.Numerics;

namespace Coldpath.Circuit.Diagrams;

/// <summary>What a diagram says of single assignments: value, count, examples.</summary>
public sealed partial class DiagramTable
{
    /// <summary>The function's value; <paramref name="assignment"/> is indexed by level.</summary>
    public bool Evaluate(Diagram f, ReadOnlySpan<bool> assignment)
    {
        var edge = f.Edge;
        while (edge > False)
            edge = assignment[LevelOf(edge)] ? HighOf(edge) : LowOf(edge);
        return edge == True;
    }

    /// <summary>The levels the function depends on, rising.</summary>
    public IReadOnlyList<int> Support(Diagram f)
    {
        var levels = new SortedSet<int>();
        foreach (var node in Reachable(f))
            levels.Add(nodes[node].Level);
        return [.. levels];
    }

    /// <summary>Nodes of the diagram, the terminal not counted.</summary>
    public int NodeCount(Diagram f) => Reachable(f).Count;

    /// <summary>Nodes of all the diagrams together, shared ones once, the terminal not counted.</summary>
    public int NodeCount(params IEnumerable<Diagram> functions) => Reachable([.. functions]).Count;

    /// <summary>How many assignments to exactly these levels satisfy f, which may depend on no other.</summary>
    public BigInteger Count(Diagram f, IReadOnlyCollection<int> levels)
    {
        var sorted = Sorted(f, levels);
        var counts = new Dictionary<int, BigInteger>();
        return CountFrom(f.Edge, 0);

        BigInteger CountFrom(int edge, int from)
        {
            var at = edge <= False ? sorted.Length : Array.BinarySearch(sorted, LevelOf(edge));
            var below =
                (edge & 1) == 0
                    ? Below(edge, at)
                    : (BigInteger.One << (sorted.Length - at)) - Below(edge ^ 1, at);
            return below << (at - from);
        }

        BigInteger Below(int edge, int at)
        {
            if (edge == True)
                return BigInteger.One;
            if (!counts.TryGetValue(edge, out var total))
            {
                total = CountFrom(LowOf(edge), at + 1) + CountFrom(HighOf(edge), at + 1);
                counts.Add(edge, total);
            }
            return total;
        }
    }

    /// <summary>
    /// The first satisfying assignment of these levels, a lower level weighing more and false before true; null when
    /// f is false. In the order of <paramref name="levels"/> sorted.
    /// </summary>
    public IReadOnlyList<KeyValuePair<int, bool>>? Pick(Diagram f, IReadOnlyCollection<int> levels)
    {
        if (f.IsFalse)
            return null;
        var sorted = Sorted(f, levels);
        var picked = new KeyValuePair<int, bool>[sorted.Length];
        var edge = f.Edge;
        for (var i = 0; i < sorted.Length; i++)
        {
            var tested = LevelOf(edge) == sorted[i];
            var value = tested && LowOf(edge) == False;
            if (tested)
                edge = value ? HighOf(edge) : LowOf(edge);
            picked[i] = KeyValuePair.Create(sorted[i], value);
        }
        return picked;
    }

    private int[] Sorted(Diagram f, IReadOnlyCollection<int> levels)
    {
        var sorted = levels.Distinct().Order().ToArray();
        if (Support(f).Except(sorted).Any())
            throw new ArgumentException("the function depends on other levels", nameof(levels));
        return sorted;
    }

    private HashSet<int> Reachable(params ReadOnlySpan<Diagram> roots)
    {
        var seen = new HashSet<int>();
        var open = new Stack<int>();
        foreach (var root in roots)
            open.Push(root.Edge >> 1);
        while (open.TryPop(out var node))
        {
            if (node == 0 || !seen.Add(node))
                continue;
            open.Push(nodes[node].Low >> 1);
            open.Push(nodes[node].High >> 1);
        }
        return seen;
    }
}
