using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Formatting;

/// <summary>Which syntax a line begins, by the offset of its first character. "else" and "end" begin none.</summary>
internal static class LineNodes
{
    public static IReadOnlyDictionary<int, SyntaxNode> Of(PanelSyntax panel)
    {
        var nodes = new Dictionary<int, SyntaxNode>();
        foreach (var statement in panel.Statements)
            Add(nodes, statement);
        return nodes;
    }

    private static void Add(Dictionary<int, SyntaxNode> nodes, SyntaxNode node)
    {
        nodes[node.Span.Start] = node;
        foreach (var line in Lines(node))
            Add(nodes, line);
    }

    /// <summary>Whether lines belong to it, down to an "end".</summary>
    public static bool IsBlock(SyntaxNode? node) =>
        node is KindSyntax or IfSyntax or ForEachPoleSyntax or SourceSyntax or ConverterSyntax;

    private static IEnumerable<KindLineSyntax> Lines(SyntaxNode node) =>
        node switch
        {
            KindSyntax kind => kind.Lines,
            IfSyntax choice => choice.Then.Concat(choice.Else),
            ForEachPoleSyntax each => each.Lines,
            SourceSyntax source => source.Lines,
            ConverterSyntax converter => converter.Lines,
            _ => [],
        };
}
