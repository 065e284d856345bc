using Antlr4.Runtime.Misc;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation;

/// <summary>The tokens that could have stood at one place, in the user's words.</summary>
internal sealed class Expectation
{
    private const int MostListed = 5;

    /// <summary>Rules that are a word each, the widest first.</summary>
    private static readonly int[] WordRules =
    [
        Grammar.RULE_name,
        Grammar.RULE_refWord,
        Grammar.RULE_subjectWord,
        Grammar.RULE_stateWord,
        Grammar.RULE_plainWord,
        Grammar.RULE_ratingWord,
    ];

    /// <summary>Signs that would only make longer what stands there.</summary>
    private static readonly string[] Lengthening = ["'+'", "'-'", "'*'", "'/'", "'['", "'%'"];

    private readonly Grammar grammar;
    private readonly IntervalSet expected;
    private readonly IntervalSet anyName;

    public Expectation(Grammar grammar, IntervalSet expected)
    {
        (this.grammar, this.expected) = (grammar, expected);
        anyName =
            WordRules
                .Select(rule => grammar.Atn.NextTokens(grammar.Atn.ruleToStartState[rule]))
                .FirstOrDefault(set => set.Subtract(expected).IsNil)
            ?? new IntervalSet();
        Keywords = Named().Select(Literal).OfType<string>().Where(IsWord).Select(k => k.Trim('\'')).ToList();
    }

    /// <summary>Words of the language, but not those that could stand there as any name could.</summary>
    public List<string> Keywords { get; }

    public bool Has(int type) => expected.Contains(type);

    /// <summary>The words expected, else the signs, else a name; null when there are too many to say.</summary>
    public string? Describe()
    {
        var likely = Keywords.Count > 0 ? Keywords.Select(k => $"'{k}'").ToList() : Signs();
        return likely.Count switch
        {
            0 => "a name",
            1 => likely[0],
            > MostListed => null,
            _ => $"{string.Join(", ", likely.SkipLast(1))} or {likely[^1]}",
        };
    }

    private List<string> Signs()
    {
        var signs = Named()
            .Where(t => Literal(t) is not { } literal || !IsWord(literal))
            .Select(Say)
            .ToList();
        var closing = signs.Except([.. Lengthening, Wording.TokenPhrase("TERMINAL")]).ToList();
        return closing.Count > 0 ? closing : signs;
    }

    private IEnumerable<int> Named() => expected.ToArray().Where(t => !anyName.Contains(t));

    private string Say(int type) =>
        Literal(type) ?? Wording.TokenPhrase(grammar.Vocabulary.GetSymbolicName(type));

    private string? Literal(int type) => type > 0 ? grammar.Vocabulary.GetLiteralName(type) : null;

    private static bool IsWord(string literal) => char.IsLetter(literal[1]);
}
