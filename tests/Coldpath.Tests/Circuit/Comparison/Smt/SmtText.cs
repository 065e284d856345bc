using System.Text;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>Definitions for an SMT solver in the making; equal conditions share one name.</summary>
internal sealed class SmtText
{
    private readonly StringBuilder text = new();
    private readonly Dictionary<string, string> names = [];

    public string Text => text.ToString();

    /// <summary>A short name for the condition: itself when it is a name or a constant.</summary>
    public string Name(string condition)
    {
        if (!condition.StartsWith('('))
            return condition;
        if (names.TryGetValue(condition, out var known))
            return known;
        var name = $"c{names.Count}";
        names.Add(condition, name);
        text.Append($"(declare-const {name} Bool)\n(assert (= {name} {condition}))\n");
        return name;
    }

    /// <summary>Something that the solver may choose.</summary>
    public string Choose(string name)
    {
        text.Append($"(declare-const {name} Bool)\n");
        return name;
    }

    public void Assert(string condition) => text.Append($"(assert {condition})\n");

    public static string And(params IEnumerable<string> terms) => Join("and", "true", "false", terms);

    public static string Or(params IEnumerable<string> terms) => Join("or", "false", "true", terms);

    public static string Not(string term) =>
        term switch
        {
            "true" => "false",
            "false" => "true",
            _ => $"(not {term})",
        };

    /// <summary>The condition, or its contrary.</summary>
    public static string Literal(string term, bool value) => value ? term : Not(term);

    private static string Join(string word, string nothing, string all, IEnumerable<string> terms)
    {
        var kept = terms.Where(t => t != nothing).Distinct().ToArray();
        return kept.Contains(all) ? all
            : kept.Length == 0 ? nothing
            : kept.Length == 1 ? kept[0]
            : $"({word} {string.Join(' ', kept)})";
    }
}
