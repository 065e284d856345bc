using System.CommandLine;
using Coldpath.Answers;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>why: what makes a point live, or the proof that nothing can.</summary>
internal static class WhyCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var point = new Argument<string>("POINT") { Description = "a terminal or named node, such as M1:U" };
        var failed = StateOptions.Failed();
        var format = Arguments.Format("text", "json");
        var command = new Command(
            "why",
            "Tell the shortest story that makes a point live, or prove that nothing can."
        )
        {
            file,
            point,
            failed,
            format,
        };
        command.SetAction(parsed =>
            (int)
                Reply.Give(
                    outside,
                    Workbench.Why(
                        Sources.Read(parsed.GetRequiredValue(file), outside),
                        parsed.GetRequiredValue(point),
                        StateOptions.Operations(parsed.GetValue(failed)),
                        outside.Interrupted
                    ),
                    parsed.GetRequiredValue(format),
                    WhyText.Of,
                    WhyJson.Of,
                    answer => answer.CanBeLive == Verdict.Open ? Exit.Unfinished : Exit.Clean
                )
        );
        return command;
    }
}
