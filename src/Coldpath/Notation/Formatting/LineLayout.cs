using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Formatting;

/// <summary>How a line is laid out in columns.</summary>
/// <param name="Family">See <see cref="Row.Family"/>.</param>
/// <param name="Indent">Spaces in front, beyond those of the block it stands in.</param>
/// <param name="Cuts">Where its second and further cells begin, as offsets in the source.</param>
internal sealed record LineLayout(string? Family, int Indent, IReadOnlyList<int> Cuts)
{
    public const string Declarations = "declaration";
    public const string Rungs = "rung";
    public const string KindLines = "kind line";
    private const int Step = 2;

    /// <param name="node">What the line begins; null for "else" and "end".</param>
    public static LineLayout Of(SyntaxNode? node, Line line) =>
        node switch
        {
            PanelNameSyntax => new(null, 0, []),
            HeaderSyntax => new("header", Step, [Second(line)]),
            DeclarationSyntax d => new(Declarations, 0, Declaration(d)),
            ChainSyntax { Rung: not null } rung => new(Rungs, 0, Rung(rung)),
            WireSyntax wire => new("wire", 0, [wire.Ends[0].Span.Start]),
            UntracedSyntax or SeenSyntax => new("knowledge", 0, [Second(line)]),
            IntentSyntax => new("intent", 0, [Second(line)]),
            MoveSyntax move => new("move", Step, [Behind(line, move.To.Span.End)]),
            KindStateSyntax state => new(
                "kind line",
                0,
                [Second(line), Behind(line, state.Name[^1].Span.End)]
            ),
            KindLineSyntax when !LineNodes.IsBlock(node) => new(KindLines, 0, [Second(line)]),
            _ => new(null, 0, []),
        };

    /// <summary>Every line that is aligned has more than its first word.</summary>
    private static int Second(Line line) => line.Lexemes[1].Start;

    private static int Behind(Line line, int end) =>
        line.Lexemes[line.Lexemes.Find(l => l.Start >= end)].Start;

    private static int[] Declaration(DeclarationSyntax declaration) =>
        declaration.Atoms.Count == 0
            ? [declaration.Tags[0].Span.Start]
            : [declaration.Tags[0].Span.Start, declaration.Atoms[0].Span.Start];

    /// <summary>A first step that is a group stands in the last cell: its width is nobody's measure.</summary>
    private static int[] Rung(ChainSyntax rung)
    {
        var (first, second) = (rung.Steps[0], rung.Steps[1]);
        return first is GroupSyntax
            ? [first.Span.Start]
            : [first.Span.Start, ArrowBefore(rung, second.Span.Start)];
    }

    private static int ArrowBefore(ChainSyntax rung, int step) =>
        rung.Span.Source.Text.LastIndexOf("->", step - 1, StringComparison.Ordinal);
}
