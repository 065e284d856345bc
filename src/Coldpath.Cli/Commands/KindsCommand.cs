using System.CommandLine;

namespace Coldpath.Cli.Commands;

/// <summary>kinds: the device kinds there are, or one of them as it is written in the language.</summary>
internal static class KindsCommand
{
    public static Command Build(Outside outside)
    {
        var name = new Argument<string[]>("NAME")
        {
            Description = "a kind, such as soft starter; none lists them all",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var command = new Command("kinds", "List the device kinds, or print one.") { name };
        command.SetAction(parsed => (int)Run(outside, string.Join(' ', parsed.GetValue(name) ?? [])));
        return command;
    }

    private static Exit Run(Outside outside, string name)
    {
        if (name.Length == 0)
            Terminal.Print(outside, Workbench.Kinds());
        else if (Workbench.Kind(name) is { } text)
            outside.Out.Write(text);
        else
            throw new UnreadableException(Near.Unknown("kind", name, Workbench.KindNames));
        return Exit.Clean;
    }
}
