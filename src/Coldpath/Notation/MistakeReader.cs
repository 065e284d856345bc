using Antlr4.Runtime;
using Antlr4.Runtime.Misc;
using Coldpath.Findings;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>Says in the user's words what the grammar stumbled over.</summary>
internal sealed class MistakeReader(Reading reading, Grammar grammar, FirstMistake strategy, Line line)
{
    private const int MostListed = 5;

    public Finding Read(RecognitionException mistake)
    {
        var token = mistake.OffendingToken;
        var before = token.TokenIndex > 0 ? line.Lexemes[token.TokenIndex - 1] : (Lexeme?)null;
        var after = before is { } b ? reading.Text(b) : null;
        var found =
            token.Type == TokenConstants.EOF ? null : reading.Text(token.StartIndex, token.StopIndex + 1);
        var at = token.Type == TokenConstants.EOF ? reading.Span(before ?? line.Lexemes[0]) : Span(token);

        if (IsMixed(mistake, token))
            return Wording.MixedAndOr(at);
        if (IsEmptyBranch(token, before))
            return Wording.EmptyBranch(at);
        if (mistake is NoViableAltException { StartToken: var start } && start.TokenIndex != token.TokenIndex)
            return found is null
                ? Wording.Expected(at, "more", after, null, null)
                : Wording.NotExpected(at, found, after, null);
        var expected = strategy.Expected(grammar, mistake);
        var keywords = Keywords(expected);
        return Wording.Expected(
            at,
            Describe(mistake, expected, keywords),
            after,
            found,
            Hint(token, keywords)
        );
    }

    private string Text(IToken token) => reading.Text(token.StartIndex, token.StopIndex + 1);

    private Span Span(IToken token) => reading.Span(token.StartIndex, token.StopIndex + 1);

    /// <summary>The condition before the connective has been read to its end with the other connective.</summary>
    private bool IsMixed(RecognitionException mistake, IToken token)
    {
        if (token.Type == TokenConstants.EOF || Text(token) is not ("and" or "or"))
            return false;
        var context = mistake.Context as ParserRuleContext;
        while (context is not (null or Grammar.ConditionContext or Grammar.GuardContext))
            context =
                context.ChildCount == 0
                    ? null
                    : context.GetChild(context.ChildCount - 1) as ParserRuleContext;
        return context is { ChildCount: > 1 };
    }

    private static bool IsEmptyBranch(IToken token, Lexeme? before) =>
        token.Type is Grammar.BAR or Grammar.RPAREN && before is { Type: Grammar.LPAREN or Grammar.BAR };

    /// <summary>
    /// The phrase of the outermost rule that has nothing of its own yet; else the tokens, if they are few.
    /// </summary>
    private string Describe(RecognitionException mistake, IntervalSet expected, List<string> keywords)
    {
        string? phrase = null;
        for (
            var context = mistake.Context as ParserRuleContext;
            context is not null;
            context = context.Parent as ParserRuleContext
        )
        {
            if (context.Start.TokenIndex != mistake.OffendingToken.TokenIndex)
                break;
            phrase = Wording.Phrase(grammar.RuleNames[context.RuleIndex]) ?? phrase;
        }
        if (phrase is not null)
            return phrase;
        var signs = Signs(expected);
        var likely = keywords.Count > 0 ? keywords.Select(k => $"'{k}'").ToList() : signs;
        return likely.Count == 0 ? "a name"
            : likely.Count > MostListed ? "something else"
            : Either(likely);
    }

    private static string Either(List<string> items) =>
        items.Count == 1 ? items[0] : $"{string.Join(", ", items.SkipLast(1))} or {items[^1]}";

    /// <summary>Keywords among the expected tokens that are not there merely because any name could stand there.</summary>
    private List<string> Keywords(IntervalSet expected)
    {
        var names = AnyName(expected);
        return expected
            .ToArray()
            .Where(t =>
                t > 0
                && !names.Contains(t)
                && grammar.Vocabulary.GetLiteralName(t) is { } name
                && char.IsLetter(name[1])
            )
            .Select(t => grammar.Vocabulary.GetLiteralName(t).Trim('\''))
            .ToList();
    }

    /// <summary>
    /// Signs among the expected tokens. Those that would only make what stands there longer are named when there is
    /// nothing else to name.
    /// </summary>
    private List<string> Signs(IntervalSet expected)
    {
        var signs = expected
            .ToArray()
            .Where(t => !AnyName(expected).Contains(t))
            .Select(Sign)
            .OfType<string>()
            .ToList();
        string[] longer = ["'+'", "'-'", "'*'", "'/'", "'['", "'%'", Wording.TokenPhrase("TERMINAL")];
        return signs.Except(longer).ToList() is { Count: > 0 } closing ? closing : signs;
    }

    /// <summary>A sign as written, or what a token stands for; null for words.</summary>
    private string? Sign(int type)
    {
        var literal = type > 0 ? grammar.Vocabulary.GetLiteralName(type) : null;
        return literal is null ? Wording.TokenPhrase(grammar.Vocabulary.GetSymbolicName(type))
            : char.IsLetter(literal[1]) ? null
            : literal;
    }

    /// <summary>The widest of the grammar's word sets that is expected whole.</summary>
    private IntervalSet AnyName(IntervalSet expected) =>
        new[]
        {
            Grammar.RULE_name,
            Grammar.RULE_refWord,
            Grammar.RULE_subjectWord,
            Grammar.RULE_stateWord,
            Grammar.RULE_plainWord,
            Grammar.RULE_ratingWord,
        }
            .Select(rule => grammar.Atn.NextTokens(grammar.Atn.ruleToStartState[rule]))
            .FirstOrDefault(set => set.Subtract(expected).IsNil)
        ?? new IntervalSet();

    /// <summary>A misspelt keyword may have passed for a name before the line went wrong.</summary>
    private string? Hint(IToken token, List<string> keywords)
    {
        for (var i = Math.Min(token.TokenIndex, line.Lexemes.Count - 1); i > 0; i--)
            if (line.Lexemes[i].Type == Grammar.WORD)
            {
                var word = reading.Text(line.Lexemes[i]);
                if (SpellChecker.Nearest(word, keywords) is { } near)
                    return $"did you mean '{near}' instead of '{word}'?";
            }
        return null;
    }
}
