using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath;

/// <summary>A panel with one more intent line behind its own, given with the question.</summary>
internal static class AskedPanel
{
    private const string Name = "the question";

    /// <summary>Lines that say what must not be.</summary>
    private static readonly string[] Excluding = ["never", "stops", "dead"];

    /// <summary>It is a line of the language, not a condition alone.</summary>
    public static bool IsLine(string? question) =>
        question is not null && Excluding.Contains(FirstWord(question));

    /// <summary>Why this cannot be asked for, as a sentence without a full stop; null when it can.</summary>
    public static string? Problem(string? question) =>
        question is null ? null
        : FirstWord(question).Length == 0
            ? "the question is empty: ask for a condition such as \"M1 runs\", or leave it out to have the failures listed"
        : question.AsSpan().Trim().ContainsAny('\r', '\n') ? "the question is one line"
        : FirstWord(question) == "can"
            ? "a 'can' line says what may be, and failures are looked for behind what must not be: "
                + "ask for a condition such as \"M1 runs\", or a never, stops or dead line"
        : null;

    private static string FirstWord(string question) =>
        question.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).FirstOrDefault("");

    /// <summary>Nothing is added when the question is null; what is wrong with it becomes findings of its own text.</summary>
    public static Opened Open(SourceText source, string? question, CancellationToken stop)
    {
        var parsed = PanelParser.Parse(source);
        if (question is null)
            return Opened.From(parsed, source, stop);
        var line = IsLine(question) ? question.Trim() : $"never {question}";
        var asked = PanelParser.Parse(new SourceText(Name, line));
        var panel = parsed.Panel with
        {
            Statements = [.. parsed.Panel.Statements, .. asked.Panel.Statements],
        };
        return Opened.From(
            new(panel, [.. parsed.Findings, .. asked.Findings]),
            source,
            stop,
            names: [.. SpokenNames.In(asked.Panel)]
        );
    }

    /// <summary>
    /// What was asked. Of a condition alone settled states are meant, unless a short is asked for: shorts are looked for
    /// in passing states too.
    /// </summary>
    public static Intent? Question(Evidence evidence, string? question)
    {
        if (question is null)
            return null;
        var asked = evidence.Whole.Netlist.Intents[^1];
        return IsLine(question)
            ? asked
            : asked with
            {
                Settled = asked.Settled || !Names<InShort>(asked.When),
            };
    }

    private static bool Names<T>(Expression condition) =>
        condition switch
        {
            Not n => Names<T>(n.Term),
            All a => a.Terms.Any(Names<T>),
            Any a => a.Terms.Any(Names<T>),
            _ => condition is T,
        };
}
