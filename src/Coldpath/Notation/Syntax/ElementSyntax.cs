using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>contact main [1 - 2], power, closed when armature is in or weld</c>.</summary>
/// <param name="Type">conductor, contact, semiconductor, thermal, series, load, diode or fault.</param>
/// <param name="Name">The words of its name; empty when it has none.</param>
/// <param name="Ends">Null only inside <c>for each pole</c>, where the pole gives them.</param>
/// <param name="Power"><c>power</c>: a load's feed can pass it.</param>
/// <param name="Through"><c>through</c>: what a bare name passes.</param>
/// <param name="ClosedWhen">Null: always closed.</param>
/// <param name="LeaksWhen">Null: not said.</param>
public sealed record ElementSyntax(
    WordSyntax Type,
    IReadOnlyList<WordSyntax> Name,
    PairSyntax? Ends,
    bool Power,
    bool Through,
    ConditionSyntax? ClosedWhen,
    ConditionSyntax? LeaksWhen,
    Span Span
) : KindLineSyntax(Span)
{
    /// <summary><c>welds</c>: has a failure of its own that keeps it closed.</summary>
    public bool Welds { get; init; }
}

/// <summary><c>coil [A1 - A2] at coil, moves armature</c>.</summary>
/// <param name="Name">Words before the bracket; empty for the plain coil.</param>
/// <param name="At">The rated voltage.</param>
public sealed record CoilSyntax(
    IReadOnlyList<WordSyntax> Name,
    PairSyntax Ends,
    ArithmeticSyntax At,
    WordSyntax Moves,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>family NO [*3 - *4], closed when G</c> or <c>family at [*3 - *4] by VARIABLE</c>.</summary>
/// <param name="Through"><c>through</c>: a bare name uses the next of this family.</param>
/// <param name="ClosedWhen">Null when <paramref name="By"/> decides.</param>
/// <param name="By">The variable whose positions close it; null when a condition does.</param>
public sealed record FamilySyntax(
    IReadOnlyList<WordSyntax> Name,
    PairSyntax Ends,
    bool Through,
    ConditionSyntax? ClosedWhen,
    WordSyntax? By,
    Span Span
) : KindLineSyntax(Span)
{
    /// <summary><c>welds</c>: each contact has a failure of its own that keeps it closed.</summary>
    public bool Welds { get; init; }
}

/// <summary><c>bar [L1] [L2] [N], first N</c>: terminals that are line side and load side at once.</summary>
/// <param name="Terminals">One list for each conductor; all its names are one net.</param>
/// <param name="First">How many are used; null for all.</param>
public sealed record BarSyntax(IReadOnlyList<ListSyntax> Terminals, ArithmeticSyntax? First, Span Span)
    : KindLineSyntax(Span);

/// <summary><c>line side [U, V, W]</c> or <c>load side […]</c>.</summary>
/// <param name="First">How many are used; null for all.</param>
public sealed record SideSyntax(bool IsLoadSide, ListSyntax Terminals, ArithmeticSyntax? First, Span Span)
    : KindLineSyntax(Span);
