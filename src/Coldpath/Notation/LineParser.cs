using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using Antlr4.Runtime.Misc;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Gives one line to one rule of the grammar.</summary>
internal sealed class LineParser
{
    private readonly Reading reading;
    private readonly LineTokens tokens;
    private readonly Grammar grammar;
    private readonly FirstMistake strategy = new();

    public LineParser(Reading reading)
    {
        this.reading = reading;
        tokens = new LineTokens(reading);
        grammar = new Grammar(tokens, TextWriter.Null, TextWriter.Null) { ErrorHandler = strategy };
        grammar.RemoveErrorListeners();
        grammar.Interpreter.PredictionMode = PredictionMode.SLL;
    }

    /// <summary>
    /// The line as the rule sees it, or null and a mistake. It holds until the next line is parsed: lines share
    /// their tokens.
    /// </summary>
    public T? Parse<T>(Line line, Func<Grammar, T> rule, LineReport report)
        where T : ParserRuleContext
    {
        tokens.Show(line.Lexemes);
        grammar.Reset();
        try
        {
            return rule(grammar);
        }
        catch (ParseCanceledException e) when (e.InnerException is RecognitionException mistake)
        {
            report.Report(new MistakeReader(reading, grammar, line, mistake).Read(strategy));
            return null;
        }
    }
}
