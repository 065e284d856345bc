using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public KindLineSyntax Variable(Grammar.VariableContext line)
    {
        var options = line.variableOption();
        return new VariableSyntax(
            Word(line.name(0)),
            Words(line.name().Skip(1)),
            OptionalWord(options.LastOrDefault(o => o.variableSort() is not null)?.variableSort()),
            OptionalWord(options.LastOrDefault(o => Head(o) == "rest")?.name()),
            OptionalWord(options.LastOrDefault(o => Head(o) == "powered")?.name()),
            options.Any(o => Head(o) == "momentary"),
            Span(line)
        );
    }

    public KindLineSyntax Move(Grammar.MoveContext line) =>
        new MoveSyntax(
            Word(line.origin),
            Word(line.target),
            Word(line.mover),
            OptionalGuard(line.when),
            OptionalGuard(line.may),
            Span(line)
        );

    public KindLineSyntax Positions(Grammar.PositionsContext line) =>
        new PositionsSyntax(
            Word(line.name()),
            Words(line.phrase()),
            line.makeBefore() is not null,
            Span(line)
        );

    public KindLineSyntax Failure(Grammar.FailureContext line) =>
        new FailureSyntax(Word(line.name(0)), Word(line.name(1)), OptionalGuard(line.guard()), Span(line));

    public KindLineSyntax State(Grammar.StateContext line) =>
        new KindStateSyntax(Words(line.label()), Guard(line.guard()), Span(line));
}
