using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public StatementSyntax PanelName(Grammar.PanelNameContext line) =>
        new PanelNameSyntax(Text(line.TEXT()), Span(line));

    public StatementSyntax Include(Grammar.IncludeContext line) =>
        new IncludeSyntax(Text(line.TEXT()), line.name().Select(Word).ToArray(), Span(line));

    public StatementSyntax Drawing(Grammar.DrawingContext line) =>
        new DrawingSyntax(Words(line.label()), OptionalWord(line.name()), Span(line));

    public StatementSyntax Rules(Grammar.RulesContext line) => new RulesSyntax(Word(line.name()), Span(line));

    public StatementSyntax System(Line line) =>
        new SystemSyntax(Atoms(line.Lexemes[1..]), reading.Span(line.Start, line.End));
}
