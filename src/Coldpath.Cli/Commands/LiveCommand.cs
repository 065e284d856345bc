using System.CommandLine;
using Coldpath.Answers;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>live: what is live after these operations.</summary>
internal static class LiveCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var set = StateOptions.Set();
        var from = StateOptions.From();
        var failed = StateOptions.Failed();
        var format = Arguments.Format("text", "json");
        var command = new Command(
            "live",
            "Operate a panel and list what is live, how, and from which supply."
        )
        {
            file,
            set,
            from,
            failed,
            format,
        };
        command.SetAction(parsed =>
            (int)
                Reply.Give(
                    outside,
                    Workbench.Live(
                        Sources.Read(parsed.GetRequiredValue(file), outside),
                        StateOptions.Operations(parsed.GetValue(set)),
                        parsed.GetValue(from) == "rest",
                        StateOptions.Operations(parsed.GetValue(failed)),
                        outside.Interrupted
                    ),
                    parsed.GetRequiredValue(format),
                    LiveText.Of,
                    LiveJson.Of,
                    ExitOf
                )
        );
        return command;
    }

    private static Exit ExitOf(LiveAnswer answer) => answer.Complete ? Exit.Clean : Exit.Unfinished;
}
