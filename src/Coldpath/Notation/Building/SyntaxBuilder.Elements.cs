using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public KindLineSyntax Element(Grammar.ElementContext line)
    {
        var options = line.elementOption();
        return new ElementSyntax(
            Word(line.elementType()),
            Words(line.name()),
            line.pair() is { } pair ? Pair(pair) : null,
            options.Any(o => Head(o) == "power"),
            options.Any(o => Head(o) == "through"),
            OptionalGuard(options.LastOrDefault(o => Head(o) == "closed")?.guard()),
            OptionalGuard(options.LastOrDefault(o => Head(o) == "leaks")?.guard()),
            Span(line)
        )
        {
            Welds = options.Any(o => Head(o) == "welds"),
        };
    }

    public KindLineSyntax Coil(Grammar.CoilContext line) =>
        new CoilSyntax(
            Words(line.name().SkipLast(1)),
            Pair(line.pair()),
            Sum(line.sum()),
            Word(line.name()[^1]),
            Span(line)
        );

    public KindLineSyntax Family(Grammar.FamilyContext line)
    {
        var options = line.familyOption();
        return new FamilySyntax(
            Words(line.familyName().name()),
            Pair(line.pair()),
            options.Any(o => Head(o) == "through"),
            OptionalGuard(options.LastOrDefault(o => Head(o) == "closed")?.guard()),
            OptionalWord(line.by),
            Span(line)
        )
        {
            Welds = options.Any(o => Head(o) == "welds"),
        };
    }

    public KindLineSyntax Bar(Grammar.BarContext line) =>
        new BarSyntax(line.list().Select(List).ToArray(), First(line.first()), Span(line));

    public KindLineSyntax Side(Grammar.SideContext line) =>
        new SideSyntax(Head(line) == "load", List(line.list()), First(line.first()), Span(line));

    public KindLineSyntax Mode(Grammar.LoadModeContext line)
    {
        var options = line.modeOption();
        return new ModeSyntax(
            Words(line.label()),
            List(line.list()),
            options.Where(o => Head(o) == "joined").SelectMany(o => o.pair()).Select(Pair).ToArray(),
            options.Where(o => Head(o) == "apart").SelectMany(o => o.pair()).Select(Pair).ToArray(),
            OptionalWord(options.LastOrDefault(o => Head(o) == "turns")?.name()),
            OptionalSum(options.LastOrDefault(o => Head(o) == "speed")?.sum()),
            Span(line)
        );
    }
}
