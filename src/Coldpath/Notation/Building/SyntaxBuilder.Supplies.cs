using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    /// <summary>The first line of a source; its lines are put in when they are read.</summary>
    public SourceSyntax Source(Grammar.SourceContext line) =>
        new(OptionalWord(line.name()), Options(line.supplyOption()), [], Span(line));

    /// <summary>The first line of a converter.</summary>
    public ConverterSyntax Converter(Grammar.ConverterContext line)
    {
        var options = line.converterOption();
        return new ConverterSyntax(
            Word(line.type),
            OptionalWord(line.own),
            List(line.list()),
            OptionalGuard(options.LastOrDefault(o => o.guard() is not null)?.guard()),
            Options(options.Select(o => o.supplyOption()).OfType<Grammar.SupplyOptionContext>().ToArray()),
            [],
            Span(line)
        );
    }

    private SupplyOptionsSyntax Options(Grammar.SupplyOptionContext[] options)
    {
        Grammar.SupplyOptionContext? Said(string head) => options.LastOrDefault(o => Head(o) == head);
        return new SupplyOptionsSyntax(
            OptionalGuard(Said("present")?.guard()),
            Said("group") is { } group ? Words(group.name()) : [],
            Said("limited") is not null,
            Said("extra") is not null,
            Said("dc") is not null,
            OptionalWord(Said("stored")?.name(0)),
            OptionalSum(Said("discharge")?.sum())
        );
    }

    public KindLineSyntax SupplyConductor(Grammar.SupplyConductorContext line)
    {
        var options = line.conductorOption();
        return new SupplyConductorSyntax(
            Terminal(line.terminal()),
            Sum(line.volts),
            OptionalSum(line.angle),
            options.Any(o => Head(o) == "plus") ? SupplyPolarity.Plus
                : options.Any(o => Head(o) == "minus") ? SupplyPolarity.Minus
                : SupplyPolarity.NotSaid,
            OptionalGuard(options.LastOrDefault(o => Head(o) == "present")?.guard()),
            Span(line)
        );
    }

    public KindLineSyntax Winding(Grammar.WindingContext line) =>
        new WindingSyntax(List(line.list()), Span(line));

    /// <summary>Behind the lists there is nothing, or "from first".</summary>
    public KindLineSyntax Coupling(Grammar.CouplingContext line) =>
        new CouplingSyntax(line.list().Select(List).ToArray(), line.COMMA() is not null, Span(line));
}
