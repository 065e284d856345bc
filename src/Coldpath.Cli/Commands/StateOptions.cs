using System.CommandLine;
using System.CommandLine.Parsing;
using Coldpath.Wiring;

namespace Coldpath.Cli.Commands;

/// <summary>Options that bring a panel into a state.</summary>
internal static class StateOptions
{
    public static Option<string[]> Set()
    {
        var set = new Option<string[]>("--set")
        {
            Description = "an operation, such as S1=HAND; repeated ones follow each other",
            HelpName = "NAME=VALUE",
            Arity = ArgumentArity.OneOrMore,
        };
        set.Validators.Add(NeedEquals);
        return set;
    }

    public static Option<string[]> Failed()
    {
        var failed = new Option<string[]>("--failed")
        {
            Description = "what has failed from the start, such as K1=jams; 'failures FILE' lists what can",
            HelpName = "DEVICE=HOW",
            Arity = ArgumentArity.OneOrMore,
        };
        failed.Validators.Add(NeedEquals);
        return failed;
    }

    public static Option<string> From()
    {
        var from = new Option<string>("--from")
        {
            Description = "where it begins: powered, or rest with every isolator open",
            DefaultValueFactory = _ => "powered",
            HelpName = "powered|rest",
        };
        return from.AcceptOnlyFromAmong("powered", "rest");
    }

    public static IReadOnlyList<Operation> Operations(string[]? set) => [.. (set ?? []).Select(Operation)];

    private static Operation Operation(string text)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        return new Operation(text[..equals].Trim(), text[(equals + 1)..].Trim());
    }

    private static void NeedEquals(OptionResult result)
    {
        foreach (var token in result.Tokens)
            if (token.Value.IndexOf('=', StringComparison.Ordinal) < 1)
                result.AddError(
                    result.Option.Name == "--failed"
                        ? $"--failed expects DEVICE=HOW, such as K1=jams, not '{token.Value}'"
                        : $"--set expects NAME=VALUE, such as S1=HAND, not '{token.Value}'"
                );
    }
}
