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

    /// <summary>Nothing is added when the condition is null; what is wrong with it becomes findings of its own text.</summary>
    public static Opened Open(SourceText source, string? condition, CancellationToken stop)
    {
        var parsed = PanelParser.Parse(source);
        if (condition is null)
            return Opened.From(parsed, source, stop);
        var asked = PanelParser.Parse(new SourceText(Name, $"never {condition}"));
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
    /// What was asked. Settled states are meant, unless a short is asked for: shorts are looked for in passing states too.
    /// </summary>
    public static Intent? Question(Evidence evidence, string? condition)
    {
        if (condition is null)
            return null;
        var asked = evidence.Whole.Netlist.Intents[^1];
        return asked with { Settled = asked.Settled || !Names<InShort>(asked.When) };
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
