using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>A term of a condition in a kind.</summary>
public abstract record KindTermSyntax(Span Span) : ConditionSyntax(Span);

/// <summary><c>armature is in</c>, <c>legs is 2</c>, <c>earthing is TN-C</c>.</summary>
/// <param name="Subject">A variable or a rating.</param>
/// <param name="Value">A value, a number or a choice: its words.</param>
public sealed record IsSyntax(IReadOnlyList<WordSyntax> Subject, IReadOnlyList<WordSyntax> Value, Span Span)
    : KindTermSyntax(Span)
{
    /// <summary><c>any link is blown</c>: of the variables that each pole has of its own.</summary>
    public Quantifier Quantifier { get; init; }
}

/// <summary><c>poles at least 2</c>, <c>poles at most 2</c>.</summary>
public sealed record CompareSyntax(
    IReadOnlyList<WordSyntax> Subject,
    bool AtLeast,
    ArithmeticSyntax Bound,
    Span Span
) : KindTermSyntax(Span);

/// <summary><c>coil given</c>: the rating was said or has a default.</summary>
public sealed record GivenSyntax(IReadOnlyList<WordSyntax> Rating, Span Span) : KindTermSyntax(Span);

/// <summary>A flag, or a failure, by its name alone: <c>mirror contacts</c>, <c>weld</c>; with any or no: <c>no weld</c>.</summary>
public sealed record SaidSyntax(Quantifier Quantifier, IReadOnlyList<WordSyntax> Name, Span Span)
    : KindTermSyntax(Span);

/// <summary><c>any main closed</c>, <c>no main closed</c>, <c>main closed</c>.</summary>
public sealed record ClosedSyntax(Quantifier Quantifier, IReadOnlyList<WordSyntax> Name, Span Span)
    : KindTermSyntax(Span);

/// <summary><c>any heater carries</c>, <c>heater carries</c>.</summary>
public sealed record CarriesSyntax(Quantifier Quantifier, IReadOnlyList<WordSyntax> Name, Span Span)
    : KindTermSyntax(Span);

/// <summary>How many of the things of one name are meant.</summary>
public enum Quantifier
{
    /// <summary>The one of this name, or this pole's.</summary>
    The,
    Any,
    No,
}

/// <summary><c>energised [a - b] between 85 % of coil and 110 % of coil</c>, <c>loosely energised [a - b]</c>.</summary>
/// <param name="Low">Lower bound; null for none.</param>
/// <param name="High">Upper bound; null for none.</param>
/// <param name="At">The rating after <c>at</c>; null when there is none.</param>
public sealed record EnergisedSyntax(
    bool Loosely,
    PairSyntax Ends,
    ArithmeticSyntax? Low,
    ArithmeticSyntax? High,
    ArithmeticSyntax? At,
    Span Span
) : KindTermSyntax(Span);

/// <summary><c>must pull [a - b] at coil</c>, <c>may pull …</c>, <c>may hold …</c>.</summary>
public sealed record PullSyntax(CoilAct Act, PairSyntax Ends, ArithmeticSyntax At, Span Span)
    : KindTermSyntax(Span);

public enum CoilAct
{
    MustPull,
    MayPull,
    MayHold,
}

/// <summary><c>fed [a, b, c] forward</c>, <c>loosely fed [a, b, c]</c>.</summary>
/// <param name="Order">forward or reverse; null for any.</param>
public sealed record FedSyntax(bool Loosely, ListSyntax Terminals, WordSyntax? Order, Span Span)
    : KindTermSyntax(Span)
{
    /// <summary><c>series fed [a, b, c]</c>: reactors and resistors in the way count as conducting too.</summary>
    public bool InSeries { get; init; }
}

/// <summary><c>single [a, b, c]</c>.</summary>
public sealed record SingleSyntax(ListSyntax Terminals, Span Span) : KindTermSyntax(Span);

/// <summary><c>joined [a - b]</c>.</summary>
public sealed record JoinedSyntax(PairSyntax Ends, Span Span) : KindTermSyntax(Span);

/// <summary><c>at most one of RATING in</c>: of the devices a rating names, at most one is in a state.</summary>
public sealed record AtMostOneSyntax(IReadOnlyList<WordSyntax> Of, IReadOnlyList<WordSyntax> State, Span Span)
    : KindTermSyntax(Span);
