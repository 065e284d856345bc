using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>What the builders of one blueprint share.</summary>
internal sealed class KindContext
{
    public KindContext(
        string tag,
        IReadOnlySet<string> moving,
        RatingBook ratings,
        PanelFacts facts,
        KindFindings findings,
        RatingFindings ofRatings
    )
    {
        Tag = tag;
        Ratings = ratings;
        Findings = findings;
        Arithmetic = new Arithmetic(ratings, findings);
        Names = new Names(findings);
        Nets = new Nets(findings);
        Conditions = new Conditions(ratings, facts, Arithmetic, Names, Nets, moving, findings);
        Unfolding = new Unfolding(ratings, Arithmetic, Conditions, ofRatings);
    }

    public string Tag { get; }
    public RatingBook Ratings { get; }
    public KindFindings Findings { get; }
    public Arithmetic Arithmetic { get; }
    public Names Names { get; }
    public Nets Nets { get; }
    public Conditions Conditions { get; }
    public Unfolding Unfolding { get; }

    /// <summary>The device's variables by the line that declares them.</summary>
    public Dictionary<PlacedLine, NamedVariable> Variables { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>The device's elements by the line that declares them.</summary>
    public Dictionary<PlacedLine, NamedElement> Elements { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>What the declaration left open and how it was taken.</summary>
    public List<string> Assumed { get; } = [];

    /// <summary>
    /// Whether a property that a line names holds. Where the kind takes a flag or rating of that name, it holds only
    /// when that was said.
    /// </summary>
    public bool Holds(bool named, string property) =>
        named
        && (
            Ratings.Has(property) || (Ratings.Forms.Find(property) is null && !Ratings.Forms.IsFlag(property))
        );

    /// <summary>The one variable of a name, in a pole the pole's own; null and a finding when there is none.</summary>
    public string? Variable(WordSyntax name, Pole? pole)
    {
        var alike = Names.Variables(name.Text);
        if (alike.Count == 0)
            Findings.Unknown(name.Span, "variable", name.Text, Names.OfVariables);
        var own = alike.Count == 1 ? alike[0] : alike.FirstOrDefault(v => pole is not null && v.Pole == pole);
        if (alike.Count > 0 && own is null)
            Findings.SayAnyOrNo(name.Span, name.Text);
        return own?.Local;
    }

    /// <summary>Ids of the elements of a name: in a pole the pole's own, else all.</summary>
    public IReadOnlyList<string> ElementIds(IReadOnlyList<WordSyntax> words, Pole? pole)
    {
        var name = string.Join(' ', words);
        var alike = Names.Elements(name);
        if (alike.Count == 0)
            Findings.Unknown(words[0].Span, "element", name, Names.OfElements);
        return [.. alike.Where(e => pole is null || e.Pole == pole).Select(e => e.Id)];
    }

    /// <summary>One of a list of words, or the first and a finding.</summary>
    public T Word<T>(WordSyntax word, string what, WordTable<T> known)
    {
        if (known.Find(word.Text) is { } entry)
            return entry.Value;
        Findings.UnknownWord(word.Span, what, word.Text, known.Words);
        return known.First.Value;
    }
}
