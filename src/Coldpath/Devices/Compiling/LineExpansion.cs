using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>The lines of a kind with those that it borrows by <c>like</c> in their places.</summary>
internal sealed class LineExpansion(KindLibrary library, KindFindings findings)
{
    private readonly HashSet<string> open = new(StringComparer.Ordinal);

    public IReadOnlyList<KindLineSyntax> Of(KindSyntax kind)
    {
        open.Add(kind.KindName);
        var lines = kind.Lines.SelectMany(l => l is LikeSyntax like ? Borrowed(like) : [l]).ToList();
        open.Remove(kind.KindName);
        return lines;
    }

    private IEnumerable<KindLineSyntax> Borrowed(LikeSyntax like)
    {
        if (open.Contains(like.KindName))
            findings.Circular(like.Span, $"'like {like.KindName}'");
        else if (library.Find(like.KindName) is not { } kind)
            findings.UnknownLike(like.Span, like.KindName, library.Names);
        else
            return Of(kind).Where(l => l is not (MeansSyntax or LetterSyntax or SymbolSyntax));
        return [];
    }
}
