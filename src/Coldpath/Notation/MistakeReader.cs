using Antlr4.Runtime;
using Coldpath.Findings;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Says in the user's words what the grammar stumbled over in one line.</summary>
internal sealed class MistakeReader(Reading reading, Grammar grammar, Line line, RecognitionException mistake)
{
    private IToken Token => mistake.OffendingToken;
    private Lexeme? Before => Token.TokenIndex > 0 ? line.Lexemes[Token.TokenIndex - 1] : null;
    private string? After => Before is { } before ? reading.Text(before) : null;

    /// <summary>What stands where something else should; null at the end of the line.</summary>
    private string? Found =>
        Token.Type == TokenConstants.EOF ? null : reading.Text(Token.StartIndex, Token.StopIndex + 1);

    private Span At =>
        Found is null
            ? reading.Span(Before ?? line.Lexemes[0])
            : reading.Span(Token.StartIndex, Token.StopIndex + 1);

    public Finding Read(FirstMistake strategy)
    {
        if (IsMixed())
            return Wording.MixedAndOr(At);
        if (IsEmptyBranch())
            return Wording.EmptyBranch(At);
        var expected = new Expectation(grammar, strategy.Expected(grammar, mistake));
        var hint = Hint(expected);
        if ((IsBehindStart() ? null : Phrase() ?? expected.Describe()) is { } what)
            return Wording.Expected(At, what, After, Found, hint);
        return Found is null
            ? Wording.Expected(At, "more", After, null, hint)
            : Wording.NotExpected(At, Found, After, hint);
    }

    /// <summary>The grammar looked one word further before it gave up: what it expects is not for this place.</summary>
    private bool IsBehindStart() =>
        mistake is NoViableAltException { StartToken: var start } && start.TokenIndex != Token.TokenIndex;

    /// <summary>The condition before the connective has been read to its end with the other connective.</summary>
    private bool IsMixed()
    {
        if (Found is not ("and" or "or"))
            return false;
        var context = mistake.Context as ParserRuleContext;
        while (context is not (null or Grammar.ConditionContext or Grammar.GuardContext))
            context = context.children?[^1] as ParserRuleContext;
        return context is { ChildCount: > 1 };
    }

    private bool IsEmptyBranch() =>
        Token.Type is Grammar.BAR or Grammar.RPAREN && Before is { Type: Grammar.LPAREN or Grammar.BAR };

    /// <summary>What the outermost rule that has nothing of its own yet is called.</summary>
    private string? Phrase()
    {
        string? phrase = null;
        var context = mistake.Context as ParserRuleContext;
        while (context is not null && context.Start.TokenIndex == Token.TokenIndex)
        {
            phrase = Wording.Phrase(grammar.RuleNames[context.RuleIndex]) ?? phrase;
            context = context.Parent as ParserRuleContext;
        }
        return phrase;
    }

    private string? Hint(Expectation expected) =>
        Token.Type == Grammar.TERMINAL && expected.Has(Grammar.COLON) ? Wording.SpaceBehindColon
        : expected.Has(Grammar.MINUS) && After?.Contains('-') == true ? Wording.SpacesAroundMinus
        : Found == "not" ? Wording.NotBeforeName
        : Misspelt(expected.Keywords);

    /// <summary>A misspelt keyword may have passed for a name before the line went wrong.</summary>
    private string? Misspelt(List<string> keywords)
    {
        for (var i = Math.Min(Token.TokenIndex, line.Lexemes.Count - 1); i > 0; i--)
            if (line.Lexemes[i].Type == Grammar.WORD)
            {
                var word = reading.Text(line.Lexemes[i]);
                if (SpellChecker.Nearest(word, keywords) is { } near)
                    return Wording.DidYouMean(near, word);
            }
        return null;
    }
}
