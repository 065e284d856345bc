using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>A variable or failure before its moves are known.</summary>
/// <param name="Local">Its name in the blueprint: with the pole's number where each pole has one.</param>
internal sealed record NamedVariable(
    string Local,
    Pole? Pole,
    VariableKind Kind,
    IReadOnlyList<string> Values
);

/// <summary>An element before its guard is known.</summary>
internal sealed record NamedElement(string Id, Pole? Pole, ElementSyntax Line, string A, string B);

/// <summary>What the lines of a kind declare, by the names they give it.</summary>
internal sealed class Names(KindFindings findings)
{
    private readonly Dictionary<string, List<NamedVariable>> variables = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<NamedElement>> elements = new(StringComparer.Ordinal);
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);

    public IEnumerable<string> OfVariables => variables.Keys;

    public IEnumerable<string> OfElements => elements.Keys.Where(n => n.Length > 0);

    public IReadOnlyList<NamedVariable> Variables(string name) => variables.GetValueOrDefault(name, []);

    public IReadOnlyList<NamedElement> Elements(string name) => elements.GetValueOrDefault(name, []);

    public NamedVariable Declare(WordSyntax name, Pole? pole, VariableKind kind, IReadOnlyList<string> values)
    {
        var local = pole is null or { IsOnly: true } ? name.Text : $"{name.Text}{pole.Number}";
        var named = new NamedVariable(local, pole, kind, values);
        if (!variables.TryGetValue(name.Text, out var alike))
            variables.Add(name.Text, alike = []);
        if (alike.Exists(v => v.Pole is null || v.Local == local))
            findings.Twice(name.Span, name.Text);
        alike.Add(named);
        return named;
    }

    public NamedElement Declare(ElementSyntax line, Pole? pole, string a, string b)
    {
        var name = string.Join(' ', line.Name);
        var named = new NamedElement(FreeId($"{a}-{b}", name), pole, line, a, b);
        if (!elements.TryGetValue(name, out var alike))
            elements.Add(name, alike = []);
        alike.Add(named);
        return named;
    }

    /// <summary>Terminal pair; elements side by side between the same two have their name behind it, else a number.</summary>
    private string FreeId(string pair, string name)
    {
        if (ids.Add(pair))
            return pair;
        var id = name.Length > 0 ? $"{pair} {name}" : pair;
        for (var i = 2; !ids.Add(id); i++)
            id = $"{pair} {name}{i}";
        return id;
    }
}
