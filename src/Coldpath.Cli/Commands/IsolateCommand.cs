using System.CommandLine;
using Coldpath.Answers;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>isolate: what to open and lock so that targets are dead.</summary>
internal static class IsolateCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var targets = new Argument<string[]>("TARGET")
        {
            Description = "devices, terminals or places that are to be dead",
            Arity = ArgumentArity.OneOrMore,
        };
        var have = new Option<string?>("--have")
        {
            Description = "ask whether opening these is enough",
            HelpName = "Q1,Q3",
        };
        var sets = Arguments.Sets();
        var format = Arguments.Format("text", "json");
        var command = new Command(
            "isolate",
            "List the minimal sets of isolating devices that make a target dead."
        )
        {
            file,
            targets,
            have,
            sets,
            format,
        };
        command.SetAction(parsed =>
            (int)
                Reply.Give(
                    outside,
                    Workbench.Isolate(
                        Sources.Read(parsed.GetRequiredValue(file), outside),
                        parsed.GetRequiredValue(targets),
                        Split(parsed.GetValue(have)),
                        outside.Interrupted,
                        parsed.GetRequiredValue(sets)
                    ),
                    parsed.GetRequiredValue(format),
                    IsolateText.Of,
                    IsolateJson.Of,
                    ExitOf
                )
        );
        return command;
    }

    /// <summary>Null when not asked; empty for an own set of nothing.</summary>
    private static string[]? Split(string? have) =>
        have?.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>A script that goes on after exit code 0 must not do so without a set that isolates.</summary>
    internal static Exit ExitOf(IsolateAnswer answer) =>
        !answer.Complete || answer.Have is { Enough: Verdict.Open } ? Exit.Unfinished
        : answer.Have is { Enough: Verdict.No } || answer.IsImpossible ? Exit.Findings
        : Exit.Clean;
}
