using System.CommandLine;
using System.Globalization;
using Coldpath.Answers;

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

    /// <summary>How many failures are reckoned with: 0, 1 or 2.</summary>
    public static Option<int> Failures(int standard)
    {
        var option = new Option<int>("--failures")
        {
            Description = "how many failures are reckoned with at most",
            DefaultValueFactory = _ => standard,
            HelpName = "0|1|2",
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && token.Value is not ("0" or "1" or "2"))
                result.AddError($"--failures expects 0, 1 or 2, not '{token.Value}'");
        });
        return option;
    }

    /// <summary>How many of the best sets are told.</summary>
    public static Option<int> Sets()
    {
        return new Option<int>("--sets")
        {
            Description = "how many of the best sets are told",
            DefaultValueFactory = _ => IsolateQuestion.UsualMost,
            HelpName = "N",
            CustomParser = given =>
            {
                if (int.TryParse(given.Tokens[0].Value, CultureInfo.InvariantCulture, out var sets))
                    if (sets is >= 1 and <= MostSets)
                        return sets;
                given.AddError($"--sets takes a number from 1 to {MostSets}");
                return 1;
            },
        };
    }

    public static Option<string?> Output() =>
        new("--output", "-o") { Description = "write to this file", HelpName = "FILE" };

    /// <summary>As many as the machine has processors, when not said.</summary>
    public static Option<int> Threads()
    {
        return new Option<int>("--threads")
        {
            Description = "how many panels are worked on at once; what is printed is the same",
            DefaultValueFactory = _ => Math.Clamp(Environment.ProcessorCount, 1, MostThreads),
            HelpName = "N",
            CustomParser = given =>
            {
                if (int.TryParse(given.Tokens[0].Value, CultureInfo.InvariantCulture, out var threads))
                    if (threads is >= 1 and <= MostThreads)
                        return threads;
                given.AddError($"--threads takes a number from 1 to {MostThreads}");
                return 1;
            },
        };
    }

    private const int MostThreads = 64;
    private const int MostSets = 10_000;
}
