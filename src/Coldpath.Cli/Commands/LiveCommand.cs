using System.CommandLine;
using System.CommandLine.Parsing;
using Coldpath.Answers;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;
using Coldpath.Wiring;

namespace Coldpath.Cli.Commands;

/// <summary>live: what is live after these operations.</summary>
internal static class LiveCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var set = new Option<string[]>("--set")
        {
            Description = "an operation, such as S1=HAND; repeated ones follow each other",
            HelpName = "NAME=VALUE",
            Arity = ArgumentArity.OneOrMore,
        };
        set.Validators.Add(NeedEquals);
        var from = new Option<string>("--from")
        {
            Description = "where it begins: powered, or rest with every isolator open",
            DefaultValueFactory = _ => "powered",
            HelpName = "powered|rest",
        };
        from.AcceptOnlyFromAmong("powered", "rest");
        var format = Arguments.Format("text", "json");
        var command = new Command(
            "live",
            "Operate a panel and list what is live, how, and from which supply."
        )
        {
            file,
            set,
            from,
            format,
        };
        command.SetAction(parsed =>
            (int)
                Reply.Give(
                    outside,
                    Workbench.Live(
                        Sources.Read(parsed.GetRequiredValue(file), outside),
                        [.. (parsed.GetValue(set) ?? []).Select(Operation)],
                        parsed.GetValue(from) == "rest",
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

    private static Operation Operation(string text)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        return new Operation(text[..equals].Trim(), text[(equals + 1)..].Trim());
    }

    private static void NeedEquals(OptionResult result)
    {
        foreach (var token in result.Tokens)
            if (token.Value.IndexOf('=', StringComparison.Ordinal) < 1)
                result.AddError($"--set expects NAME=VALUE, such as S1=HAND, not '{token.Value}'");
    }
}
