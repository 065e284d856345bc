using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>
/// Anything the parser read, with the place it was read from. Trees are immutable; lists compare by reference, so
/// compare trees by their parts and not with <c>==</c>.
/// </summary>
public abstract record SyntaxNode(Span Span);

/// <summary>One word, number or terminal name exactly as written: "K1", "-Q1", "100", "1/L1", "13-14", "*3".</summary>
public sealed record WordSyntax(string Text, Span Span) : SyntaxNode(Span)
{
    /// <summary>Whether the word looks like a tag: it has a capital letter or a digit.</summary>
    public bool LooksLikeTag => Text.Any(c => char.IsUpper(c) || char.IsAsciiDigit(c));

    public override string ToString() => Text;
}

/// <summary>A quoted text, without its quotes; the span has them.</summary>
public sealed record TextSyntax(string Text, Span Span) : SyntaxNode(Span)
{
    public override string ToString() => Text;
}
