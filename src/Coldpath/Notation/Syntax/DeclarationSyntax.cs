using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>fuse F10 and F11 2 A</c>: one device, or several alike.</summary>
/// <param name="Kind">The words in front of the first tag. Never empty.</param>
/// <param name="Tags">
/// The first word with a capital letter or a digit, and those joined to it by <c>and</c>; where there is none, the
/// last word before the ratings. Never empty.
/// </param>
/// <param name="Atoms">The ratings, flat.</param>
public sealed record DeclarationSyntax(
    IReadOnlyList<WordSyntax> Kind,
    IReadOnlyList<WordSyntax> Tags,
    IReadOnlyList<AtomSyntax> Atoms,
    Span Span
) : StatementSyntax(Span)
{
    /// <summary>The kind's name with single spaces: "control transformer".</summary>
    public string KindName => string.Join(' ', Kind);
}
