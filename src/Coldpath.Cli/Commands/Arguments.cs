using System.CommandLine;

namespace Coldpath.Cli.Commands;

/// <summary>Arguments and options that several commands take.</summary>
internal static class Arguments
{
    public static Argument<string> File() =>
        new("FILE") { Description = "a .panel file, or - for the standard input" };

    public static Argument<string[]> Files(string description) =>
        new("FILE") { Arity = ArgumentArity.OneOrMore, Description = description };

    public static Option<string> Format(params string[] formats)
    {
        var option = new Option<string>("--format")
        {
            Description = "how the answer is written",
            DefaultValueFactory = _ => formats[0],
            HelpName = string.Join('|', formats),
        };
        return option.AcceptOnlyFromAmong(formats);
    }

    public static Option<string?> Output() =>
        new("--output", "-o") { Description = "write to this file", HelpName = "FILE" };
}
