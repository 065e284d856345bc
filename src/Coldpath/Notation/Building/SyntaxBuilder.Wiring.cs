using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public StatementSyntax Chain(Grammar.ChainContext line) =>
        new ChainSyntax(null, line.step().Select(Step).ToArray(), Span(line));

    public StatementSyntax Rung(Grammar.RungContext line) =>
        new ChainSyntax(Word(line.name()), line.step().Select(Step).ToArray(), Span(line));

    public StatementSyntax Wire(Grammar.WireContext line) =>
        new WireSyntax(Word(line.name()), line.@ref().Select(Ref).ToArray(), Span(line));

    public StatementSyntax Untraced(Grammar.UntracedContext line) =>
        new UntracedSyntax(Refs(line.refs()), line.TEXT() is { } why ? Text(why) : null, Span(line));

    public StatementSyntax Seen(Grammar.SeenContext line) => new SeenSyntax(Refs(line.refs()), Span(line));

    public StatementSyntax FromDrawing(Grammar.FromDrawingContext line) =>
        new FromDrawingSyntax(Refs(line.refs()), Span(line));

    private StepSyntax Step(Grammar.StepContext step) =>
        step.group() is { } group
            ? new GroupSyntax(group.branch().Select(Branch).ToArray(), Span(group))
            : Ref(step.@ref());

    private BranchSyntax Branch(Grammar.BranchContext branch) =>
        new(branch.step().Select(Step).ToArray(), Span(branch));

    private RefSyntax Ref(Grammar.RefContext context) =>
        new(Words([context.name(), .. context.refWord()]), Terminals(context.terminals()), Span(context));

    private RefSyntax[] Refs(Grammar.RefsContext refs) => refs.@ref().Select(Ref).ToArray();
}
