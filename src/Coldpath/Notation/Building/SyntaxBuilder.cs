using Antlr4.Runtime;
using Antlr4.Runtime.Tree;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

/// <summary>Makes syntax of what the grammar saw in one line. One part a file; this one has words and terminals.</summary>
internal sealed partial class SyntaxBuilder(Reading reading, LineReport report)
{
    private Span Span(ParserRuleContext context) =>
        reading.Span(context.Start.StartIndex, context.Stop.StopIndex + 1);

    private string Text(IToken token) => reading.Text(token.StartIndex, token.StopIndex + 1);

    /// <summary>The first word of an option: what it says.</summary>
    private string Head(ParserRuleContext context) => Text(context.Start);

    private WordSyntax Word(ParserRuleContext context) => new(Text(context.Start), Span(context));

    private WordSyntax? OptionalWord(ParserRuleContext? context) => context is null ? null : Word(context);

    private WordSyntax[] Words(params IEnumerable<ParserRuleContext> contexts) =>
        contexts.Select(Word).ToArray();

    private WordSyntax[] Words(Grammar.PhraseContext phrase) => Words(phrase.plainWord());

    private WordSyntax[] Words(Grammar.LabelContext label) => Words([label.name(), .. label.plainWord()]);

    private TextSyntax Text(ITerminalNode node)
    {
        var (start, end) = (node.Symbol.StartIndex, node.Symbol.StopIndex + 1);
        return new TextSyntax(reading.Text(start + 1, end - 1), reading.Span(start, end));
    }

    private WordSyntax Terminal(Grammar.TerminalContext terminal) =>
        terminal.STAR() is null || terminal.name() is not { } name
            ? Word(terminal)
            : new WordSyntax(string.Concat("*", Text(name.Start)), Span(terminal));

    private PairSyntax Pair(Grammar.PairContext pair) =>
        new(Terminal(pair.terminal(0)), Terminal(pair.terminal(1)), Span(pair));

    private ListSyntax List(Grammar.ListContext list) =>
        new(list.terminal().Select(Terminal).ToArray(), Span(list));

    private TerminalsSyntax? Terminals(Grammar.TerminalsContext? terminals)
    {
        if (terminals is null)
            return null;
        if (terminals.list() is { } list)
            return new TerminalsSyntax(List(list).Names, true, Span(terminals));
        var (start, end) = (terminals.Start.StartIndex + 1, terminals.Start.StopIndex + 1);
        var name = new WordSyntax(reading.Text(start, end), reading.Span(start, end));
        return new TerminalsSyntax([name], false, Span(terminals));
    }
}
