namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// Families of sets: an assignment stands for the set of levels that are true in it. Families may be astronomically
/// large; they stay implicit, and only their count or their cheapest members are taken out.
/// </summary>
public sealed partial class DiagramTable
{
    /// <summary>All sets that contain a set of the family.</summary>
    public Diagram UpwardClosure(Diagram f) => new(Upward(f.Edge));

    /// <summary>
    /// The family's minimal sets under inclusion, over exactly these levels (f may depend on no other): an
    /// assignment of the result has every other level of the list false.
    /// </summary>
    public Diagram Minimal(Diagram f, IReadOnlyCollection<int> levels)
    {
        var sorted = Sorted(f, levels);
        var known = new Dictionary<(int Edge, int From), int>();
        return new(MinimalFrom(f.Edge, 0));

        int MinimalFrom(int edge, int from)
        {
            if (edge == False || from == sorted.Length)
                return edge;
            if (known.TryGetValue((edge, from), out var result))
                return result;
            var low = MinimalFrom(Below(edge, sorted[from], false), from + 1);
            var high = False;
            if (LevelOf(edge) == sorted[from])
                high = And(MinimalFrom(HighOf(edge), from + 1), Upward(LowOf(edge)) ^ 1);
            result = Make(sorted[from], low, high);
            known.Add((edge, from), result);
            return result;
        }
    }

    /// <summary>
    /// The family's sets over these levels, cheapest first, those of equal cost in order of their levels; taken out
    /// one at a time, so that the first few of a huge family cost little.
    /// </summary>
    /// <param name="f">May depend on no other level.</param>
    /// <param name="levels">All levels that a set may hold.</param>
    /// <param name="cost">Of one level in a set, not negative; 1 each when null.</param>
    public IEnumerable<IReadOnlyList<int>> Sets(
        Diagram f,
        IReadOnlyCollection<int> levels,
        Func<int, long>? cost = null
    )
    {
        var sorted = Sorted(f, levels);
        var prices = sorted.Select(level => cost?.Invoke(level) ?? 1).ToArray();
        var cheapest = new Dictionary<int, long?> { [True] = 0, [False] = null };
        var open = new PriorityQueue<Partial, Partial>(Comparer<Partial>.Create(Partial.Compare));
        Push(f.Edge, 0, 0, []);
        while (open.TryDequeue(out var partial, out _))
        {
            if (partial.At == sorted.Length)
            {
                yield return partial.Chosen;
                continue;
            }
            var level = sorted[partial.At];
            Push(Below(partial.Edge, level, false), partial.At + 1, partial.Spent, partial.Chosen);
            Push(
                Below(partial.Edge, level, true),
                partial.At + 1,
                partial.Spent + prices[partial.At],
                [.. partial.Chosen, level]
            );
        }

        void Push(int edge, int at, long spent, int[] chosen)
        {
            if (Cheapest(edge) is not { } rest)
                return;
            var partial = new Partial(edge, at, spent, chosen, spent + rest);
            open.Enqueue(partial, partial);
        }

        long? Cheapest(int edge)
        {
            if (cheapest.TryGetValue(edge, out var least))
                return least;
            var without = Cheapest(LowOf(edge));
            var with = Cheapest(HighOf(edge)) + prices[Array.BinarySearch(sorted, LevelOf(edge))];
            least = without is null || with < without ? with : without;
            cheapest.Add(edge, least);
            return least;
        }
    }

    private int Upward(int f)
    {
        if (f <= False)
            return f;
        if (Known(f, f, Operation.Upward, out var known))
            return known;
        var low = Upward(LowOf(f));
        return Remember(f, f, Operation.Upward, Make(LevelOf(f), low, Or(low, Upward(HighOf(f)))));
    }

    /// <summary>A set that is decided for the first levels, and the least it can cost in the end.</summary>
    private sealed record Partial(int Edge, int At, long Spent, int[] Chosen, long Total)
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
