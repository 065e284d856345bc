namespace Coldpath.Wiring;

/// <summary>
/// A condition of a netlist. A guard uses variables only (<see cref="Constant"/>, <see cref="VariableIs"/> and the
/// three connectives); a move's condition and an intent may also ask about the network.
/// </summary>
public abstract record Expression
{
    public static readonly Expression True = new Constant(true);
    public static readonly Expression False = new Constant(false);

    /// <summary>Conjunction with the obvious simplifications; true when empty.</summary>
    public static Expression AllOf(params IEnumerable<Expression> terms)
    {
        var kept = terms.Where(t => t is not Constant { Value: true }).Distinct().ToArray();
        return kept.Any(t => t is Constant) ? False
            : kept.Length == 0 ? True
            : kept.Length == 1 ? kept[0]
            : new All(kept);
    }

    /// <summary>Disjunction with the obvious simplifications; false when empty.</summary>
    public static Expression AnyOf(params IEnumerable<Expression> terms)
    {
        var kept = terms.Where(t => t is not Constant { Value: false }).Distinct().ToArray();
        return kept.Any(t => t is Constant) ? True
            : kept.Length == 0 ? False
            : kept.Length == 1 ? kept[0]
            : new Any(kept);
    }

    /// <summary>Negation; constants and double negations fold.</summary>
    public static Expression Negate(Expression term) =>
        term switch
        {
            Constant c => c.Value ? False : True,
            Not n => n.Term,
            _ => new Not(term),
        };
}

public sealed record Constant(bool Value) : Expression;

/// <summary>The variable has this value.</summary>
public sealed record VariableIs(string Variable, string Value) : Expression;

public sealed record Not(Expression Term) : Expression;

public sealed record All(EquatableList<Expression> Terms) : Expression
{
    public All(IEnumerable<Expression> terms)
        : this(new EquatableList<Expression>(terms)) { }
}

public sealed record Any(EquatableList<Expression> Terms) : Expression
{
    public Any(IEnumerable<Expression> terms)
        : this(new EquatableList<Expression>(terms)) { }
}

/// <summary>
/// Two nets lie in different solid components reached, at the grade, by conductors of one supply whose voltage
/// lies in the band (volts, inclusive; no upper bound when <paramref name="High"/> is null).
/// </summary>
public sealed record Energised(string A, string B, Grade Grade, double Low, double? High) : Expression;

/// <summary>The element carries current.</summary>
public sealed record Carries(string Element) : Expression;

/// <summary>The element's closed guard holds.</summary>
public sealed record Closed(string Element) : Expression;

/// <summary>Three nets in three solid components are reached by three conductors of one supply, in this order.</summary>
public sealed record Fed(string A, string B, string C, PhaseOrder Order, Grade Grade) : Expression;

/// <summary>Exactly two different voltages reach the three nets.</summary>
public sealed record SinglePhased(string A, string B, string C) : Expression;

/// <summary>Two nets lie in one solid component.</summary>
public sealed record Joined(string A, string B) : Expression;

public sealed record Live(string Net) : Expression;

public sealed record Runs(string Load, Turning Turns) : Expression;

/// <summary>The supply is part of a short.</summary>
public sealed record InShort(string Supply) : Expression;

/// <summary>Settled, and no delay move is enabled.</summary>
public sealed record Quiet : Expression;

/// <summary>How far reach may spread: through closed contacts, through series elements too, through loads too.</summary>
public enum Grade
{
    Solid,
    Load,
    Loose,
}

public enum PhaseOrder
{
    Any,
    Forward,
    Reverse,
}

public enum Turning
{
    Any,
    Forward,
    Reverse,
}
