using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public KindLineSyntax Use(Grammar.UseContext line) =>
        line.phrase() is { } rating
            ? new UseSyntax(null, Words(rating), Span(line))
            : new UseSyntax(Word(line.name()), [], Span(line));

    public KindLineSyntax Isolates(Grammar.IsolatesContext line)
    {
        var options = line.isolatesOption();
        return new IsolatesSyntax(
            Word(line.name()),
            Words(line.phrase()),
            options.Any(o => Head(o) == "lockable"),
            options.Any(o => Head(o) == "visible"),
            options.Select(o => o.NUMBER()).LastOrDefault(n => n is not null) is { } rank
                ? Whole(rank)
                : null,
            Span(line)
        );
    }

    public KindLineSyntax Protects(Grammar.ProtectsContext line) =>
        new ProtectsSyntax(Words(line.against), Words(line.through), Word(line.by), Span(line));

    public KindLineSyntax OpensOnShort(Grammar.OpensOnShortContext line) =>
        new OpensOnShortSyntax(
            Words(line.phrase()),
            Word(line.variableName),
            Word(line.value),
            OptionalSum(line.sum()),
            Span(line)
        );

    public KindLineSyntax Constraint(Grammar.ConstraintContext line) =>
        new ConstraintSyntax(
            Word(line.sort),
            Words(line.constraintName().name()),
            Guard(line.guard()),
            Span(line)
        );

    public KindLineSyntax DevicePair(Grammar.DevicePairContext line) =>
        new DevicePairSyntax(Word(line.name()), Words(line.phrase()), Span(line));

    /// <summary>The condition of the first line of an <c>if</c>.</summary>
    public ConditionSyntax If(Grammar.IfBlockContext line) => Guard(line.guard());

    /// <summary>The first line of a <c>for each pole</c>; its lines are put in when they are read.</summary>
    public ForEachPoleSyntax ForEachPole(Grammar.ForEachPoleContext line) =>
        new(line.pair().Select(Pair).ToArray(), First(line.first()), [], Span(line));

    public IReadOnlyList<WordSyntax> KindName(Grammar.KindContext line) => Words(line.name());
}
