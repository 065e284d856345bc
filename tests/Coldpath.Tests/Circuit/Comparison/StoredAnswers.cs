using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>
/// What the interpreter once answered, a line each: the mark of the question, the answer. It saves starting Node and
/// visiting every state; that the interpreter still says so is a test of its own, which also writes the file anew.
/// </summary>
internal sealed class StoredAnswers : IInterpreter
{
    private readonly Dictionary<string, string> answers;

    public StoredAnswers() =>
        answers = File.ReadLines(Path).Select(line => line.Split(' ', 2)).ToDictionary(l => l[0], l => l[1]);

    public static string Path { get; } =
        System.IO.Path.Combine(
            RepositoryRoot.Path,
            "tests/Coldpath.Tests/Circuit/Comparison/stored-answers.txt"
        );

    public JsonElement Ask(string operation, Netlist netlist, string? more = null) =>
        JsonDocument.Parse(answers[Mark(operation, netlist, more)]).RootElement;

    private static string Mark(string operation, Netlist netlist, string? more)
    {
        var question = Encoding.UTF8.GetBytes($"{operation} {NetlistJson.ToText(netlist)} {more}");
        return Convert.ToHexString(SHA256.HashData(question))[..16];
    }

    /// <summary>Passes questions on and keeps the answers as they are stored.</summary>
    internal sealed class Keeper(Interpreter interpreter) : IInterpreter
    {
        private readonly SortedDictionary<string, string> lines = new(StringComparer.Ordinal);

        public string Text => string.Concat(lines.Select(l => $"{l.Key} {l.Value}\n"));

        public JsonElement Ask(string operation, Netlist netlist, string? more = null)
        {
            var answer = interpreter.Ask(operation, netlist, more);
            lines[Mark(operation, netlist, more)] = answer.GetRawText();
            return answer;
        }
    }
}
