namespace Coldpath.Circuit.Diagrams;

/// <summary>Quantifiers and cofactors. A cube is a conjunction of literals.</summary>
public sealed partial class DiagramTable
{
    /// <summary>The conjunction of the variables at the levels.</summary>
    public Diagram Cube(params IEnumerable<int> levels) =>
        Cube(levels.Distinct().Select(level => KeyValuePair.Create(level, true)));

    /// <summary>The conjunction of the literals; each level at most once.</summary>
    public Diagram Cube(IEnumerable<KeyValuePair<int, bool>> literals)
    {
        var cube = True;
        foreach (var (level, value) in literals.OrderByDescending(l => l.Key))
            cube = value ? Make(level, False, cube) : Make(level, cube, False);
        return new(cube);
    }

    /// <summary>No more than <paramref name="most"/> of the levels, each listed once, are true.</summary>
    public Diagram AtMost(int most, params IEnumerable<int> levels)
    {
        // One function for each number still allowed, from the last level up; the first entry allows none.
        var allowed = new int[most + 1];
        Array.Fill(allowed, True);
        foreach (var level in levels.OrderDescending())
            for (var left = most; left >= 0; left--)
                allowed[left] = Make(level, allowed[left], left == 0 ? False : allowed[left - 1]);
        return new(allowed[most]);
    }

    /// <summary>True when some values of the cube's variables make f true.</summary>
    public Diagram Exists(Diagram f, Diagram cube) => new(Exists(f.Edge, cube.Edge));

    /// <summary>True when all values of the cube's variables make f true.</summary>
    public Diagram ForAll(Diagram f, Diagram cube) => new(Exists(f.Edge ^ 1, cube.Edge) ^ 1);

    /// <summary>Exists of the conjunction, without building the conjunction.</summary>
    public Diagram AndExists(Diagram f, Diagram g, Diagram cube) => new(AndExists(f.Edge, g.Edge, cube.Edge));

    /// <summary>f with the variable at the level fixed.</summary>
    public Diagram Restrict(Diagram f, int level, bool value) =>
        new(Restrict(f.Edge, Literal(level, value).Edge));

    /// <summary>f with the cube's variables fixed as its literals say.</summary>
    public Diagram Restrict(Diagram f, Diagram cube) => new(Restrict(f.Edge, cube.Edge));

    /// <summary>
    /// A function that equals f on the assignments of <paramref name="care"/>: without the variables that a cube
    /// fixes, or false outside what is no cube.
    /// </summary>
    public Diagram Within(Diagram f, Diagram care) => IsCube(care) ? Restrict(f, care) : And(f, care);

    /// <summary>A conjunction of literals, the empty one (true) included.</summary>
    public bool IsCube(Diagram f)
    {
        while (!f.IsConstant)
        {
            if (!Low(f).IsFalse && !High(f).IsFalse)
                return false;
            f = Low(f).IsFalse ? High(f) : Low(f);
        }
        return f.IsTrue;
    }

    /// <summary>f with g in place of the variable at the level.</summary>
    public Diagram Substitute(Diagram f, int level, Diagram g) =>
        IfThenElse(g, Restrict(f, level, true), Restrict(f, level, false));

    private int Exists(int f, int cube)
    {
        if (f <= False)
            return f;
        var level = LevelOf(f);
        while (LevelOf(cube) < level)
            cube = HighOf(cube);
        if (cube == True)
            return f;
        if (Known(f, cube, Operation.Exists, out var known))
            return known;
        int result;
        if (LevelOf(cube) == level)
        {
            var rest = HighOf(cube);
            result = Exists(LowOf(f), rest);
            if (result != True)
                result = Or(result, Exists(HighOf(f), rest));
        }
        else
        {
            var low = Exists(LowOf(f), cube);
            result = Make(level, low, Exists(HighOf(f), cube));
        }
        return Remember(f, cube, Operation.Exists, result);
    }

    private int AndExists(int f, int g, int cube)
    {
        if (f > g)
            (f, g) = (g, f);
        if (f == False || g == False || f == (g ^ 1))
            return False;
        if (f == True || f == g)
            return Exists(g, cube);
        var level = Math.Min(LevelOf(f), LevelOf(g));
        while (LevelOf(cube) < level)
            cube = HighOf(cube);
        if (cube == True)
            return And(f, g);
        if (Known(f, g, Operation.AndExists | cube, out var known))
            return known;
        var hidden = LevelOf(cube) == level;
        var rest = hidden ? HighOf(cube) : cube;
        var whenFalse = AndExists(Below(f, level, false), Below(g, level, false), rest);
        int result;
        if (hidden && whenFalse == True)
            result = True;
        else
        {
            var whenTrue = AndExists(Below(f, level, true), Below(g, level, true), rest);
            result = hidden ? Or(whenFalse, whenTrue) : Make(level, whenFalse, whenTrue);
        }
        return Remember(f, g, Operation.AndExists | cube, result);
    }

    private int Restrict(int f, int cube)
    {
        if (f <= False)
            return f;
        var level = LevelOf(f);
        while (LevelOf(cube) < level)
            cube = HighOf(cube) == False ? LowOf(cube) : HighOf(cube);
        if (cube == True)
            return f;
        if (LevelOf(cube) == level)
            return HighOf(cube) == False
                ? Restrict(LowOf(f), LowOf(cube))
                : Restrict(HighOf(f), HighOf(cube));
        if (Known(f, cube, Operation.Restrict, out var known))
            return known;
        var low = Restrict(LowOf(f), cube);
        return Remember(f, cube, Operation.Restrict, Make(level, low, Restrict(HighOf(f), cube)));
    }
}
