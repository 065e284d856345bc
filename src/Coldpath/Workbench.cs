using Coldpath.Answers;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Text;
using Coldpath.Wiring;

namespace Coldpath;

/// <summary>
/// The questions that can be asked of a description, each answered from its text alone. Everything the command line
/// prints comes from here.
/// </summary>
public static class Workbench
{
    /// <summary>The tool's version.</summary>
    public const string Version = "0.1.0";

    /// <summary>Every check and every finding of the parser, by code.</summary>
    public static IReadOnlyList<Card> Cards => [];

    public static CheckReport Check(SourceText source, CancellationToken stop) =>
        new()
        {
            Source = source,
            Panel = source.Name,
            Complete = false,
            Incomplete = [Unread],
        };

    /// <summary>What is live after operations, from powered or from rest.</summary>
    public static Answered<LiveAnswer> Live(
        SourceText source,
        IReadOnlyList<Operation> operations,
        bool fromRest,
        CancellationToken stop
    ) => new(null, [], Unread);

    /// <summary>What makes a point live, or that nothing can.</summary>
    public static Answered<WhyAnswer> Why(SourceText source, string point, CancellationToken stop) =>
        new(null, [], Unread);

    /// <summary>What isolates targets; <paramref name="have"/> is the asker's own set, null when there is none.</summary>
    public static Answered<IsolateAnswer> Isolate(
        SourceText source,
        IReadOnlyList<string> targets,
        IReadOnlyList<string>? have,
        CancellationToken stop
    ) => new(null, [], Unread);

    /// <summary>The canonical layout of a description.</summary>
    public static Answered<string> Format(SourceText source) => new(null, [], Unread);

    /// <summary>The flattened panel as JSON.</summary>
    public static Answered<string> Netlist(SourceText source) => new(null, [], Unread);

    /// <summary>All standard kinds and what they are.</summary>
    public static Page Kinds() => new();

    /// <summary>A standard kind as it is written; null when there is none of that name.</summary>
    public static string? Kind(string name) => null;

    private const string Unread = "descriptions are not read yet";
}
