using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>variable position: open | closed, rest open, powered closed</c>.</summary>
/// <param name="Values">At least two.</param>
/// <param name="Sort">process, condition, cell, timer or trip; null when not said.</param>
/// <param name="Rest">The value at rest; null for the first.</param>
/// <param name="Powered">The value when the panel is powered; null for the value at rest.</param>
public sealed record VariableSyntax(
    WordSyntax Name,
    IReadOnlyList<WordSyntax> Values,
    WordSyntax? Sort,
    WordSyntax? Rest,
    WordSyntax? Powered,
    bool Momentary,
    Span Span
) : KindLineSyntax(Span);

/// <summary>
/// <c>open -> closed by operator when C, may when C</c>. It belongs to the nearest <see cref="VariableSyntax"/> or
/// <see cref="PositionsSyntax"/> above it in the file, also across an <c>if</c>.
/// </summary>
/// <param name="By">operator, process, settle, delay, trip or condition.</param>
/// <param name="When">Null: always.</param>
/// <param name="May">When the move is optional; null: never.</param>
public sealed record MoveSyntax(
    WordSyntax From,
    WordSyntax To,
    WordSyntax By,
    ConditionSyntax? When,
    ConditionSyntax? May,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>positions switch of positions, make before break</c>.</summary>
/// <param name="Of">The rating that lists the positions.</param>
public sealed record PositionsSyntax(
    WordSyntax Variable,
    IReadOnlyList<WordSyntax> Of,
    bool MakeBeforeBreak,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>failure weld of class contact, when main closed</c>.</summary>
/// <param name="When">When it can occur; null: at any time.</param>
public sealed record FailureSyntax(WordSyntax Name, WordSyntax Class, ConditionSyntax? When, Span Span)
    : KindLineSyntax(Span);

/// <summary><c>state full speed when speed is full</c>.</summary>
/// <param name="Name">Its words, at least one.</param>
public sealed record KindStateSyntax(IReadOnlyList<WordSyntax> Name, ConditionSyntax When, Span Span)
    : KindLineSyntax(Span);
