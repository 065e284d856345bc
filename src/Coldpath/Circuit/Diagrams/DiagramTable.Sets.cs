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
    /// The family's sets over these levels, cheapest first, those of equal cost in the order in which the list has
    /// their levels; taken out one at a time, so that the first few of a huge family cost little.
    /// </summary>
    /// <param name="f">May depend on no other level.</param>
    /// <param name="levels">All levels that a set may hold, in any order.</param>
    /// <param name="cost">Of one level in a set, not negative; 1 each when null.</param>
    public IEnumerable<IReadOnlyList<int>> Sets(
        Diagram f,
        IReadOnlyCollection<int> levels,
        Func<int, long>? cost = null
    )
    {
        int[] listed = [.. levels.Distinct()];
        Sorted(f, listed);
        var places = listed.Index().ToDictionary(p => p.Item, p => p.Index);
        var table = new DiagramTable(budget, capacity: 256, cancellation);
        var family = CopyTo(table, f, level => places[level]);
        var prices = listed.Select(level => cost?.Invoke(level) ?? 1).ToArray();
        return new CheapestSets(table, prices)
            .Of(family)
            .Select(set => (IReadOnlyList<int>)[.. set.Select(place => listed[place])]);
    }

    /// <summary>The same function in another table, each level renamed.</summary>
    public Diagram CopyTo(DiagramTable other, Diagram f, Func<int, int> level)
    {
        var copies = new Dictionary<int, Diagram>();
        return Copy(f);

        Diagram Copy(Diagram g)
        {
            if (g.IsConstant)
                return g;
            if (!copies.TryGetValue(g.Edge, out var copy))
            {
                copy = other.IfThenElse(other.Variable(level(Level(g))), Copy(High(g)), Copy(Low(g)));
                copies.Add(g.Edge, copy);
            }
            return copy;
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
}
