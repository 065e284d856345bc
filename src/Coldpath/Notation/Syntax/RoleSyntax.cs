using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>use stop</c>, or <c>use from RATING</c>.</summary>
/// <param name="Use">The word; null when a rating says it.</param>
/// <param name="From">The rating's words; empty when a word says it.</param>
public sealed record UseSyntax(WordSyntax? Use, IReadOnlyList<WordSyntax> From, Span Span)
    : KindLineSyntax(Span);

/// <summary><c>isolates by position through main, lockable, visible, rank 2</c>.</summary>
/// <param name="By">The variable.</param>
/// <param name="Through">The name of the elements it opens.</param>
/// <param name="Rank">Null when not said.</param>
public sealed record IsolatesSyntax(
    WordSyntax By,
    IReadOnlyList<WordSyntax> Through,
    bool Lockable,
    bool Visible,
    int? Rank,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>protects against phase loss through heater by trip</c>.</summary>
/// <param name="Against">"overload", "phase loss", "earth fault": its words.</param>
public sealed record ProtectsSyntax(
    IReadOnlyList<WordSyntax> Against,
    IReadOnlyList<WordSyntax> Through,
    WordSyntax By,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>opens on short through main, position becomes tripped, breaks interrupting</c>.</summary>
/// <param name="Breaks">Null when not said.</param>
public sealed record OpensOnShortSyntax(
    IReadOnlyList<WordSyntax> Through,
    WordSyntax Variable,
    WordSyntax Becomes,
    ArithmeticSyntax? Breaks,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>constraint mechanical NAME: at most one of RATING in</c>, or a condition behind the colon.</summary>
/// <param name="Sort">mechanical, key or mirror.</param>
/// <param name="Name">Its words; may be empty.</param>
/// <param name="Holds">An <see cref="AtMostOneSyntax"/> or any other condition.</param>
public sealed record ConstraintSyntax(
    WordSyntax Sort,
    IReadOnlyList<WordSyntax> Name,
    ConditionSyntax Holds,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>pair reversing of RATING</c>.</summary>
/// <param name="Sort">reversing, speed or change-over.</param>
public sealed record DevicePairSyntax(WordSyntax Sort, IReadOnlyList<WordSyntax> Of, Span Span)
    : KindLineSyntax(Span);
