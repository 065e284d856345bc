using System.CommandLine;
using System.CommandLine.Help;
using Coldpath.Cli.Commands;

namespace Coldpath.Cli;

/// <summary>The whole program over a given outside: parse the arguments, run a command, say how it ended.</summary>
public static class CommandLine
{
    public static Exit Run(string[] arguments, Outside outside)
    {
        try
        {
            var exit = Guarded(arguments, outside);
            outside.Out.Flush();
            return exit;
        }
        catch (IOException)
        {
            // Nobody reads the output any more. What was not read cannot count as answered.
            return Exit.Unfinished;
        }
    }

    private static Exit Guarded(string[] arguments, Outside outside)
    {
        try
        {
            return Invoke(arguments, outside);
        }
        catch (OperationCanceledException)
        {
            Terminal.Complain(outside, "interrupted; nothing is proved");
            return Exit.Unfinished;
        }
        catch (UnreadableException unreadable)
        {
            Terminal.Complain(outside, unreadable.Message);
            return Exit.Unusable;
        }
        catch (Exception defect)
            when (defect is not IOException && outside.Variable("COLDPATH_TRACE") is null)
        {
            Apologise(outside, arguments, defect);
            return Exit.Unfinished;
        }
    }

    private static Exit Invoke(string[] arguments, Outside outside)
    {
        var root = Root(outside);
        var parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0 && parsed.Action is not HelpAction and not ExampleHelp)
            return Refuse(parsed, root, outside);
        return (Exit)
            parsed.Invoke(
                new InvocationConfiguration
                {
                    Output = outside.Out,
                    Error = outside.Error,
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = null,
                }
            );
    }

    /// <summary>A wrong command makes every further word wrong too: only it is named.</summary>
    private static Exit Refuse(ParseResult parsed, RootCommand root, Outside outside)
    {
        if (parsed.CommandResult.Command is RootCommand && parsed.UnmatchedTokens is [var word, ..])
            Terminal.Complain(outside, Near.Unknown("command", word, root.Subcommands.Select(c => c.Name)));
        else
            foreach (var error in parsed.Errors)
                Terminal.Complain(outside, error.Message);
        Terminal.Complain(outside, "--help shows how it is used");
        return Exit.Unusable;
    }

    private static RootCommand Root(Outside outside)
    {
        var root = new RootCommand(
            "Reads the wiring of a motor starter panel from text and answers what is live and why, what isolates it, "
                + "and what is wrong. Verify by measurement: the description may not match the panel."
        )
        {
            CheckCommand.Build(outside),
            LiveCommand.Build(outside),
            WhyCommand.Build(outside),
            IsolateCommand.Build(outside),
            FailuresCommand.Build(outside),
            DrawCommand.Build(outside),
            ExplainCommand.Build(outside),
            KindsCommand.Build(outside),
            FmtCommand.Build(outside),
            ExportCommand.Build(outside),
            CompletionCommand.Build(outside),
        };
        ExampleHelp.AddTo(root);
        root.Options.OfType<VersionOption>().Single().Action = new PrintVersion();
        return root;
    }

    private static void Apologise(Outside outside, string[] arguments, Exception defect)
    {
        Terminal.Complain(outside, "sorry, that is a defect of this program; nothing is proved");
        Terminal.Complain(outside, $"please report: {defect.GetType().Name}: {defect.Message}");
        Terminal.Complain(outside, $"  from: coldpath {string.Join(' ', arguments)}");
        Terminal.Complain(outside, "  with the panel file, and what COLDPATH_TRACE=1 prints in addition");
    }
}
