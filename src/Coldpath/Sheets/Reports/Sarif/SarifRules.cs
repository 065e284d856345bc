using System.Text.Json;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Sheets.Reports.Sarif;

/// <summary>The rules of a run: every card, and one for each code that has none, in the order of their codes.</summary>
internal sealed class SarifRules
{
    private readonly IReadOnlyList<Rule> rules;
    private readonly Dictionary<string, int> indexes;

    private SarifRules(IReadOnlyList<Rule> rules)
    {
        this.rules = rules;
        indexes = rules.Select((rule, i) => (rule.Code, i)).ToDictionary(p => p.Code, p => p.i);
    }

    public static SarifRules From(IEnumerable<Card> cards, IEnumerable<Finding> findings)
    {
        var carded = cards.Select(c => new Rule(c.Code, c.Name, c.Severity, c));
        var bare = findings.Select(f => new Rule(f.Code, f.Name, f.Severity, null));
        return new SarifRules([
            .. carded.Concat(bare).DistinctBy(r => r.Code).OrderBy(r => r.Code, StringComparer.Ordinal),
        ]);
    }

    public int IndexOf(string code) => indexes[code];

    /// <summary>The code of the check with this name; null when no rule has it.</summary>
    public string? CodeOf(string name) => rules.FirstOrDefault(r => r.Name == name)?.Code;

    public void Write(Utf8JsonWriter json) => json.Items("rules", rules, rule => Write(json, rule));

    private static void Write(Utf8JsonWriter json, Rule rule)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Code);
        json.WriteString("name", rule.Name);
        if (rule.Card is { } card)
            WriteCard(json, card);
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", SarifText.Level(rule.Severity));
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteString("severity", FindingText.Word(rule.Severity));
        if (rule.Card is not null)
            json.Strings("tags", [ExplainText.FamilyName(rule.Card.Family)]);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteCard(Utf8JsonWriter json, Card card)
    {
        json.Message("shortDescription", card.Title);
        json.Message("fullDescription", card.Why);
        var help = $"{card.Remedy}\n\nReference: {card.Reference}";
        json.Message("help", card.Limits is { } limits ? $"{help}\n\nLimits: {limits}" : help);
    }

    private sealed record Rule(string Code, string Name, Severity Severity, Card? Card);
}
