using System.CommandLine;
using Coldpath.Answers;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>failures: which failures bring something about, and which show themselves.</summary>
internal static class FailuresCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var condition = new Argument<string?>("CONDITION")
        {
            Description =
                "what must not be, such as \"M1 runs and S0 pressed\", or a line such as \"stops M1 by S0\"; none lists the failures themselves",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var most = Arguments.Failures(standard: 2);
        var format = Arguments.Format("text", "json");
        var command = new Command(
            "failures",
            "Find the failures that bring something about, each with its story, and tell which of them some operation shows."
        )
        {
            file,
            condition,
            most,
            format,
        };
        command.SetAction(parsed =>
            (int)
                Reply.Give(
                    outside,
                    Workbench.Failures(
                        Sources.Read(parsed.GetRequiredValue(file), outside),
                        parsed.GetValue(condition),
                        parsed.GetValue(most),
                        outside.Interrupted
                    ),
                    parsed.GetRequiredValue(format),
                    FailuresText.Of,
                    FailuresJson.Of,
                    answer => answer.Complete ? Exit.Clean : Exit.Unfinished
                )
        );
        return command;
    }
}
