using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>
/// A condition: of an intent, with <see cref="StateSyntax"/> as its terms, or of a kind, with the terms of
/// <see cref="KindTermSyntax"/>. Brackets are not kept: they show in the nesting.
/// </summary>
public abstract record ConditionSyntax(Span Span) : SyntaxNode(Span);

/// <summary>Two terms or more.</summary>
public sealed record AndSyntax(IReadOnlyList<ConditionSyntax> Terms, Span Span) : ConditionSyntax(Span);

/// <summary>Two terms or more.</summary>
public sealed record OrSyntax(IReadOnlyList<ConditionSyntax> Terms, Span Span) : ConditionSyntax(Span);

public sealed record NotSyntax(ConditionSyntax Term, Span Span) : ConditionSyntax(Span);

/// <summary>
/// <c>K2 closed</c>, <c>S1 at HAND</c>, <c>M1:U live</c>. Names that share a state come as one term each:
/// <c>K2 and K3 closed</c> is the conjunction of two, whose <paramref name="Predicate"/> is the same words.
/// </summary>
/// <param name="Subject">Words up to the first that looks like a tag, or else the first word; without terminals.</param>
/// <param name="Predicate">The words after it, at least one.</param>
public sealed record StateSyntax(RefSyntax Subject, IReadOnlyList<WordSyntax> Predicate, Span Span)
    : ConditionSyntax(Span)
{
    /// <summary>The state's words with single spaces: "full speed", "at HAND".</summary>
    public string State => string.Join(' ', Predicate);
}
