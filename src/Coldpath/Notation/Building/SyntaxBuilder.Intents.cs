using System.Globalization;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    public StatementSyntax Never(Grammar.NeverContext line) =>
        new NeverSyntax(
            Condition(line.condition()),
            Meant(line.settled()),
            Failures(line.failures()),
            Span(line)
        );

    private StatesMeant Meant(Grammar.SettledContext? when) =>
        when is null ? StatesMeant.Any
        : Text(when.Stop) == "quiet" ? StatesMeant.Quiet
        : StatesMeant.Settled;

    public StatementSyntax Dead(Grammar.DeadContext line) =>
        new DeadSyntax(
            Place(line.place()),
            Condition(line.condition()),
            Failures(line.failures()),
            Span(line)
        );

    public StatementSyntax Stops(Grammar.StopsContext line) =>
        new StopsSyntax(
            Place(line.what),
            Place(line.by),
            line.atOnce() is not null,
            Failures(line.failures()),
            Span(line)
        );

    public StatementSyntax Can(Grammar.CanContext line) =>
        new CanSyntax(
            Place(line.what),
            line._via.Select(Place).ToArray(),
            Failures(line.failures()),
            Span(line)
        );

    public StatementSyntax Waive(Grammar.WaiveContext line) =>
        new WaiveSyntax(Word(line.name()), Refs(line.refs()), Text(line.TEXT()), Span(line));

    private RefSyntax Place(Grammar.PlaceContext place) =>
        new(Words([place.name(), .. place.plainWord()]), Terminals(place.terminals()), Span(place));

    private int? Failures(Grammar.FailuresContext? failures) =>
        failures is null ? null : Whole(failures.NUMBER());

    /// <summary>A number as a whole one; what is too large or has a fraction is a mistake.</summary>
    private int Whole(Antlr4.Runtime.Tree.ITerminalNode number)
    {
        var text = Text(number.Symbol);
        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value))
            report.Report(
                Wording.NotWhole(reading.Span(number.Symbol.StartIndex, number.Symbol.StopIndex + 1), text)
            );
        return value;
    }
}
