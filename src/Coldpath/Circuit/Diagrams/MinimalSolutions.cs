namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// The minimal sets of a function that further true levels never make false, as a family (A. Rauzy, "New algorithms for
/// fault trees analysis", Reliability Engineering and System Safety 40, 1993): those of the low branch, and with the
/// level added those of the high branch that the low branch is not true of already.
/// </summary>
/// <param name="table">Where the functions live.</param>
/// <param name="families">Where the families are made; its levels are the table's.</param>
internal sealed class MinimalSolutions(DiagramTable table, FamilyTable families)
{
    private readonly Dictionary<Diagram, Family> known = new()
    {
        [Diagram.True] = Family.Nothing,
        [Diagram.False] = Family.None,
    };
    private readonly Dictionary<(Family, Diagram), Family> outside = [];

    public Family Of(Diagram f)
    {
        if (!known.TryGetValue(f, out var sets))
        {
            var low = table.Low(f);
            sets = families.Make(table.Level(f), Of(low), Outside(Of(table.High(f)), low));
            known.Add(f, sets);
        }
        return sets;
    }

    /// <summary>The sets of the family that the function is false of.</summary>
    private Family Outside(Family sets, Diagram f)
    {
        if (sets.IsNone || f.IsFalse)
            return sets;
        if (f.IsTrue)
            return Family.None;
        if (sets == Family.Nothing)
            return sets;
        if (!outside.TryGetValue((sets, f), out var kept))
        {
            kept = OutsideBranches(sets, f);
            outside.Add((sets, f), kept);
        }
        return kept;
    }

    private Family OutsideBranches(Family sets, Diagram f)
    {
        var level = families.Level(sets);
        if (table.Level(f) < level)
            return Outside(sets, table.Low(f));
        var tested = table.Level(f) == level;
        var high = Outside(families.High(sets), tested ? table.High(f) : f);
        return families.Make(level, Outside(families.Low(sets), tested ? table.Low(f) : f), high);
    }
}
