using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>takes current in A, bare</c>.</summary>
/// <param name="Name">Its words, at least one.</param>
/// <param name="Bare">May be written without its name.</param>
/// <param name="Default">Null when there is none; a value after "of A | B" is a <see cref="WordAtom"/>.</param>
public sealed record TakesSyntax(
    IReadOnlyList<WordSyntax> Name,
    RatingFormSyntax Form,
    bool Bare,
    bool Needed,
    AtomSyntax? Default,
    Span Span
) : KindLineSyntax(Span);

/// <summary>What a rating looks like.</summary>
public abstract record RatingFormSyntax(Span Span) : SyntaxNode(Span);

/// <summary><c>in V</c>, or <c>in V to V</c> for a pair.</summary>
/// <param name="Unit">As in <see cref="Units"/>.</param>
/// <param name="SecondUnit">Null unless a pair.</param>
public sealed record UnitFormSyntax(string Unit, string? SecondUnit, Span Span) : RatingFormSyntax(Span);

/// <summary><c>of AC-1 | AC-2 | AC-3</c>: one of these, each of one word or more.</summary>
public sealed record ChoiceFormSyntax(IReadOnlyList<string> Choices, Span Span) : RatingFormSyntax(Span);

/// <summary><c>as number</c> and so on.</summary>
public sealed record PlainFormSyntax(PlainForm Form, Span Span) : RatingFormSyntax(Span);

public enum PlainForm
{
    Number,
    Text,

    /// <summary>Selector positions between bars.</summary>
    Positions,

    /// <summary>Tags of other devices joined by <c>and</c>.</summary>
    Devices,
}

/// <summary><c>flag mirror contacts</c>.</summary>
public sealed record FlagSyntax(IReadOnlyList<WordSyntax> Name, Span Span) : KindLineSyntax(Span);

/// <summary><c>let ratio = primary / secondary</c>.</summary>
public sealed record LetSyntax(IReadOnlyList<WordSyntax> Name, ArithmeticSyntax Value, Span Span)
    : KindLineSyntax(Span);
