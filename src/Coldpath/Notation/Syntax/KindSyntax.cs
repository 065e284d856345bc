using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>kind soft starter … end</c>.</summary>
/// <param name="Name">Its words, at least one.</param>
public sealed record KindSyntax(
    IReadOnlyList<WordSyntax> Name,
    IReadOnlyList<KindLineSyntax> Lines,
    Span Span
) : StatementSyntax(Span)
{
    /// <summary>The name with single spaces.</summary>
    public string KindName => string.Join(' ', Name);
}

/// <summary>One line of a kind, or a block of them.</summary>
public abstract record KindLineSyntax(Span Span) : SyntaxNode(Span);

/// <summary>A line that could not be read; its one finding has been given.</summary>
public sealed record BrokenLineSyntax(IReadOnlyList<WordSyntax> Words, Span Span) : KindLineSyntax(Span);

/// <summary><c>means "…"</c>.</summary>
public sealed record MeansSyntax(TextSyntax Text, Span Span) : KindLineSyntax(Span);

/// <summary><c>letter Q</c>.</summary>
public sealed record LetterSyntax(WordSyntax Letter, Span Span) : KindLineSyntax(Span);

/// <summary><c>symbol push button</c>.</summary>
public sealed record SymbolSyntax(IReadOnlyList<WordSyntax> Name, Span Span) : KindLineSyntax(Span);

/// <summary><c>like selector</c>: all lines of another kind but what it is called, means and looks like.</summary>
/// <param name="Kind">The other kind's name, at least one word.</param>
public sealed record LikeSyntax(IReadOnlyList<WordSyntax> Kind, Span Span) : KindLineSyntax(Span)
{
    /// <summary>The name with single spaces.</summary>
    public string KindName => string.Join(' ', Kind);
}

/// <summary><c>if CONDITION … else … end</c>, decided when the ratings are known.</summary>
/// <param name="Else">Empty when there is no <c>else</c>.</param>
public sealed record IfSyntax(
    ConditionSyntax Condition,
    IReadOnlyList<KindLineSyntax> Then,
    IReadOnlyList<KindLineSyntax> Else,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>for each pole [1/L1 - 2/T1] [3/L2 - 4/T2], first poles … end</c>.</summary>
/// <param name="First">How many of the pairs are used; null for all.</param>
public sealed record ForEachPoleSyntax(
    IReadOnlyList<PairSyntax> Poles,
    ArithmeticSyntax? First,
    IReadOnlyList<KindLineSyntax> Lines,
    Span Span
) : KindLineSyntax(Span);

/// <summary><c>[a - b]</c>: line side and load side, or two ends.</summary>
public sealed record PairSyntax(WordSyntax A, WordSyntax B, Span Span) : SyntaxNode(Span);

/// <summary><c>[a, b, c]</c>: terminals in order, at least one.</summary>
public sealed record ListSyntax(IReadOnlyList<WordSyntax> Names, Span Span) : SyntaxNode(Span);
