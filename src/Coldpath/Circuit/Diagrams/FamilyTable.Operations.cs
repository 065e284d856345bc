namespace Coldpath.Circuit.Diagrams;

/// <summary>Unions, choices and minimal sets.</summary>
public sealed partial class FamilyTable
{
    private readonly Dictionary<(Family, Family), Family> unions = [];
    private readonly Dictionary<(Family, Family), Family> free = [];
    private readonly Dictionary<Family, Family> minimal = [];

    /// <summary>The sets of either.</summary>
    public Family Union(Family f, Family g)
    {
        if (f.Node > g.Node)
            (f, g) = (g, f);
        if (f.IsNone || f == g)
            return g;
        if (!unions.TryGetValue((f, g), out var union))
        {
            var level = Math.Min(Level(f), Level(g));
            var high = Union(Holding(f, level), Holding(g, level));
            union = Make(level, Union(Sparing(f, level), Sparing(g, level)), high);
            unions.Add((f, g), union);
        }
        return union;
    }

    /// <summary>The sets of f that contain no set of g.</summary>
    public Family FreeOf(Family f, Family g)
    {
        if (g.IsNone || f.IsNone)
            return f;
        if (f == g || HasNothing(g))
            return Family.None;
        if (f == Family.Nothing)
            return f;
        if (!free.TryGetValue((f, g), out var kept))
        {
            var (level, less) = (Level(f), Sparing(g, Level(f)));
            kept =
                Level(g) < level
                    ? FreeOf(f, Low(g))
                    : Make(level, FreeOf(Low(f), less), FreeOf(FreeOf(High(f), Holding(g, level)), less));
            free.Add((f, g), kept);
        }
        return kept;
    }

    /// <summary>The sets that contain no other set of the family.</summary>
    public Family Minimal(Family f)
    {
        if (f.IsConstant)
            return f;
        if (!minimal.TryGetValue(f, out var kept))
        {
            var low = Minimal(Low(f));
            kept = Make(Level(f), low, FreeOf(Minimal(High(f)), low));
            minimal.Add(f, kept);
        }
        return kept;
    }

    /// <summary>The empty set is one of the family's.</summary>
    public bool HasNothing(Family f)
    {
        while (!f.IsConstant)
            f = Low(f);
        return f == Family.Nothing;
    }

    /// <summary>The sets with the level, each without it.</summary>
    public Family With(Family family, int level) => Chosen(family, level, held: true);

    /// <summary>The sets without the level.</summary>
    public Family Without(Family family, int level) => Chosen(family, level, held: false);

    private Family Chosen(Family family, int level, bool held)
    {
        var known = new Dictionary<Family, Family>();
        return Choose(family);

        Family Choose(Family f)
        {
            if (Level(f) >= level)
                return held ? Holding(f, level) : Sparing(f, level);
            if (!known.TryGetValue(f, out var chosen))
            {
                chosen = Make(Level(f), Choose(Low(f)), Choose(High(f)));
                known.Add(f, chosen);
            }
            return chosen;
        }
    }

    /// <summary>As <see cref="With"/>, of a level that is not after the first.</summary>
    private Family Holding(Family f, int level) => Level(f) == level ? High(f) : Family.None;

    /// <summary>As <see cref="Without"/>, of a level that is not after the first.</summary>
    private Family Sparing(Family f, int level) => Level(f) == level ? Low(f) : f;
}
