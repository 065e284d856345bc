using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>Questions in the words of the interpreter (viewer/survey.mjs), as objects that become its JSON.</summary>
internal static class Part
{
    public static readonly object Settled = Is("settled");
    public static readonly object Quiet = Is("quiet");

    public static object Is(string word) => new { @is = word };

    public static object All(params IEnumerable<object> parts) => new { all = parts.ToArray() };

    public static object Any(params IEnumerable<object> parts) => new { any = parts.ToArray() };

    public static object Not(object part) => new { not = part };

    /// <summary>An expression of the netlist, with elements taken out and variables taken as at rest.</summary>
    public static object Holds(
        object expression,
        IEnumerable<string>? without = null,
        IEnumerable<string>? rest = null
    ) =>
        new
        {
            holds = expression,
            without = without?.Order(StringComparer.Ordinal).ToArray() ?? [],
            rest = rest?.ToArray() ?? [],
        };

    public static object Var(string variable, string value) => new { var = variable, @is = value };

    public static object AtRest(Variable variable) => Var(variable.Name, variable.Rest);

    public static object Runs(string load, string turns = "any") => new { runs = load, turns };

    public static object Joined(string a, string b) => new { joined = new[] { a, b } };

    public static object LiveFrom(string net, string supply) => new { live = net, from = supply };

    public static object AnyClosed(IEnumerable<Element> elements) =>
        Any(elements.Select(e => new { closed = e.Id }));

    /// <summary>A condition as the netlist has it.</summary>
    public static object Of(Expression condition)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
            ExpressionJson.Write(json, condition);
        return JsonNode.Parse(Encoding.UTF8.GetString(bytes.ToArray()))!;
    }
}
