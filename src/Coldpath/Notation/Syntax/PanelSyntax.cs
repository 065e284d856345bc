using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>A whole file: a panel, a file of kinds, or both.</summary>
/// <param name="Statements">In file order; a kind is one statement with its lines inside.</param>
/// <param name="Comments">All comments in file order, also those inside kinds and inside statements.</param>
public sealed record PanelSyntax(
    IReadOnlyList<StatementSyntax> Statements,
    IReadOnlyList<CommentSyntax> Comments,
    Span Span
) : SyntaxNode(Span)
{
    /// <summary>
    /// Words of every statement and kind line that could not be read. Whoever binds names stays silent about a name
    /// that occurs here: the broken line may have declared it.
    /// </summary>
    public required IReadOnlySet<string> BrokenWords { get; init; }

    /// <summary>Whether all of the text was understood: there are no findings.</summary>
    public required bool IsWhole { get; init; }
}

/// <summary>A comment with its '#'.</summary>
/// <param name="OwnLine">Whether nothing but the comment stands on its line.</param>
public sealed record CommentSyntax(string Text, bool OwnLine, Span Span) : SyntaxNode(Span);

/// <summary>One statement at the outer level of a file.</summary>
public abstract record StatementSyntax(Span Span) : SyntaxNode(Span);

/// <summary>A statement that could not be read; its one finding has been given.</summary>
/// <param name="Words">Every word and number in it.</param>
public sealed record BrokenSyntax(IReadOnlyList<WordSyntax> Words, Span Span) : StatementSyntax(Span);
