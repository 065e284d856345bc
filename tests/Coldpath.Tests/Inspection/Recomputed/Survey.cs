using System.Text.Json;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>Asks the interpreter about all reachable states of a panel, or about a sample of them when there are too many.</summary>
internal sealed class Survey(Interpreter interpreter, Netlist netlist, int limit)
{
    /// <summary>Null before the first question: whether all states were looked at.</summary>
    public bool? Complete { get; private set; }

    /// <summary>For each part, whether it holds in some reachable state.</summary>
    public IReadOnlyList<bool> Happens(IReadOnlyList<object> parts) =>
        [
            .. Ask([.. parts.Select(p => new { where = p })])
                .Select(a => a.GetProperty("count").GetInt32() > 0),
        ];

    /// <summary>
    /// Whether moves other than those to avoid lead from states in which one part holds to one in which the other does.
    /// </summary>
    public bool Leads(object from, IEnumerable<string> avoid, object to) =>
        Ask([
            new
            {
                where = from,
                avoid = avoid.ToArray(),
                then = to,
            },
        ])[0]
            .GetProperty("then")
            .GetBoolean();

    private JsonElement[] Ask(object[] questions)
    {
        if (questions.Length == 0)
            return [];
        var more = $"\"limit\":{limit},\"questions\":{JsonSerializer.Serialize(questions)}";
        var answer = interpreter.Ask("survey", netlist, more);
        Complete = answer.GetProperty("complete").GetBoolean();
        return [.. answer.GetProperty("answers").EnumerateArray()];
    }
}
