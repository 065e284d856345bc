using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using Antlr4.Runtime.Misc;
using Coldpath.Findings;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Gives one line to one rule of the grammar.</summary>
internal sealed class LineParser
{
    private readonly Reading reading;
    private readonly Grammar grammar;
    private readonly FirstMistake strategy = new();

    public LineParser(Reading reading)
    {
        this.reading = reading;
        grammar = new Grammar(Tokens(ArraySegment<Lexeme>.Empty), TextWriter.Null, TextWriter.Null)
        {
            ErrorHandler = strategy,
        };
        grammar.RemoveErrorListeners();
        grammar.Interpreter.PredictionMode = PredictionMode.SLL;
    }

    /// <summary>The line as the rule sees it, or null and a mistake.</summary>
    public T? Parse<T>(Line line, Func<Grammar, T> rule, LineReport report)
        where T : ParserRuleContext
    {
        grammar.TokenStream = Tokens(line.Lexemes);
        try
        {
            return rule(grammar);
        }
        catch (ParseCanceledException e) when (e.InnerException is RecognitionException mistake)
        {
            report.Report(new MistakeReader(reading, grammar, strategy, line).Read(mistake));
            return null;
        }
    }

    private static CommonTokenStream Tokens(ArraySegment<Lexeme> lexemes)
    {
        var tokens = new List<IToken>(lexemes.Count + 1);
        foreach (var lexeme in lexemes)
            tokens.Add(
                new CommonToken(lexeme.Type) { StartIndex = lexeme.Start, StopIndex = lexeme.End - 1 }
            );
        var end = lexemes.Count == 0 ? 0 : lexemes[^1].End;
        tokens.Add(new CommonToken(TokenConstants.EOF) { StartIndex = end, StopIndex = end - 1 });
        return new CommonTokenStream(new ListTokenSource(tokens));
    }
}
