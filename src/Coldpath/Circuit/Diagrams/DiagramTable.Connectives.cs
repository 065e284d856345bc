namespace Coldpath.Circuit.Diagrams;

/// <summary>And, or, exclusive or, if-then-else.</summary>
public sealed partial class DiagramTable
{
    public Diagram And(Diagram f, Diagram g) => new(And(f.Edge, g.Edge));

    public Diagram Or(Diagram f, Diagram g) => new(Or(f.Edge, g.Edge));

    public Diagram Xor(Diagram f, Diagram g) => new(Xor(f.Edge, g.Edge));

    public Diagram Implies(Diagram f, Diagram g) => new(Or(f.Edge ^ 1, g.Edge));

    public Diagram Equivalent(Diagram f, Diagram g) => new(Xor(f.Edge, g.Edge) ^ 1);

    /// <summary>f and not g.</summary>
    public Diagram Except(Diagram f, Diagram g) => new(And(f.Edge, g.Edge ^ 1));

    public Diagram IfThenElse(Diagram f, Diagram g, Diagram h) => new(IfThenElse(f.Edge, g.Edge, h.Edge));

    /// <summary>True when some assignment satisfies both.</summary>
    public bool Meet(Diagram f, Diagram g) => And(f.Edge, g.Edge) != False;

    /// <summary>True when every assignment that satisfies f satisfies g.</summary>
    public bool Entails(Diagram f, Diagram g) => And(f.Edge, g.Edge ^ 1) == False;

    public Diagram AllOf(params IEnumerable<Diagram> terms) => terms.Aggregate(Diagram.True, And);

    public Diagram AnyOf(params IEnumerable<Diagram> terms) => terms.Aggregate(Diagram.False, Or);

    private int Or(int f, int g) => And(f ^ 1, g ^ 1) ^ 1;

    private int And(int f, int g)
    {
        if (f > g)
            (f, g) = (g, f);
        if (f <= False)
            return f == True ? g : False;
        if ((f ^ g) <= 1)
            return f == g ? f : False;
        if (Known(f, g, Operation.And, out var known))
            return known;
        ref readonly var left = ref nodes[f >> 1];
        ref readonly var right = ref nodes[g >> 1];
        int level = Math.Min(left.Level, right.Level),
            low = f,
            high = f,
            otherLow = g,
            otherHigh = g;
        if (left.Level == level)
            (low, high) = (left.Low ^ f & 1, left.High ^ f & 1);
        if (right.Level == level)
            (otherLow, otherHigh) = (right.Low ^ g & 1, right.High ^ g & 1);
        var whenFalse = And(low, otherLow);
        var whenTrue = And(high, otherHigh);
        return Remember(f, g, Operation.And, Make(level, whenFalse, whenTrue));
    }

    private int Xor(int f, int g)
    {
        var complement = (f ^ g) & 1;
        f &= ~1;
        g &= ~1;
        if (f == g)
            return False ^ complement;
        if (f > g)
            (f, g) = (g, f);
        if (f == True)
            return g ^ 1 ^ complement;
        if (Known(f, g, Operation.Xor, out var known))
            return known ^ complement;
        var level = Math.Min(LevelOf(f), LevelOf(g));
        var whenFalse = Xor(Below(f, level, false), Below(g, level, false));
        var whenTrue = Xor(Below(f, level, true), Below(g, level, true));
        return Remember(f, g, Operation.Xor, Make(level, whenFalse, whenTrue)) ^ complement;
    }

    private int IfThenElse(int f, int g, int h)
    {
        if (f <= False)
            return f == True ? g : h;
        if (g == h)
            return g;
        if (g == (h ^ 1))
            return Xor(f, h);
        if (g == True || g == f)
            return Or(f, h);
        if (g == False || g == (f ^ 1))
            return And(f ^ 1, h);
        if (h == False || h == f)
            return And(f, g);
        if (h == True || h == (f ^ 1))
            return Or(f ^ 1, g);
        if ((f & 1) != 0)
            (f, g, h) = (f ^ 1, h, g);
        var complement = g & 1;
        g ^= complement;
        h ^= complement;
        if (Known(f, g, Operation.IfThenElse | h, out var known))
            return known ^ complement;
        var level = Math.Min(LevelOf(f), Math.Min(LevelOf(g), LevelOf(h)));
        var whenFalse = IfThenElse(Below(f, level, false), Below(g, level, false), Below(h, level, false));
        var whenTrue = IfThenElse(Below(f, level, true), Below(g, level, true), Below(h, level, true));
        return Remember(f, g, Operation.IfThenElse | h, Make(level, whenFalse, whenTrue)) ^ complement;
    }

    /// <summary>The cofactor by a level at or above the function's first.</summary>
    private int Below(int f, int level, bool value) =>
        LevelOf(f) != level ? f
        : value ? HighOf(f)
        : LowOf(f);
}
