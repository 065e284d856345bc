using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Coldpath.Cli;

/// <summary>The usual help, with examples below it.</summary>
internal sealed class ExampleHelp(HelpAction usual) : SynchronousCommandLineAction
{
    private static readonly Dictionary<string, string[]> Examples = new()
    {
        ["coldpath"] =
        [
            "coldpath check panels/pump.panel      what is wrong with it",
            "coldpath why panels/pump.panel M1:U   what makes this terminal live",
            "coldpath isolate panels/pump.panel M1 what to open and lock",
        ],
        ["check"] =
        [
            "coldpath check pump.panel",
            "coldpath check panels --fail-on defect",
            "coldpath check panels --format sarif -o findings.sarif",
            "generate | coldpath check - --format json",
        ],
        ["live"] =
        [
            "coldpath live pump.panel",
            "coldpath live pump.panel --set S1=HAND --set S3=pressed",
            "coldpath live pump.panel --from rest --set Q1=closed --format json",
        ],
        ["why"] = ["coldpath why pump.panel M1:U", "coldpath why pump.panel T1:X1 --format json"],
        ["isolate"] =
        [
            "coldpath isolate pump.panel M1",
            "coldpath isolate pump.panel K3:2/T1 \"starter compartment\"",
            "coldpath isolate pump.panel M1 --have Q1,Q3",
        ],
        ["draw"] =
        [
            "coldpath draw pump.panel -o pump.svg",
            "coldpath draw pump.panel -o pump.pdf --paper a3 --lines 1",
            "coldpath draw pump.panel -o running.svg --set S1=HAND --set S3=pressed",
            "coldpath draw pump.panel -o finding.png --finding way-without-overload --dpi 200",
            "coldpath draw pump.panel -o - --format svg --sheet 1",
        ],
        ["explain"] = ["coldpath explain way-without-overload", "coldpath explain S012", "coldpath explain"],
        ["kinds"] = ["coldpath kinds", "coldpath kinds soft starter"],
        ["fmt"] = ["coldpath fmt pump.panel", "coldpath fmt --check panels", "coldpath fmt - < pump.panel"],
        ["netlist"] = ["coldpath export netlist pump.panel -o pump.json"],
        ["completion"] =
        [
            "source <(coldpath completion bash)",
            "coldpath completion zsh > ~/.zfunc/_coldpath",
            "coldpath completion fish > ~/.config/fish/completions/coldpath.fish",
        ],
    };

    public static void AddTo(RootCommand root)
    {
        var help = root.Options.OfType<HelpOption>().Single();
        if (help.Action is HelpAction usual)
            help.Action = new ExampleHelp(usual);
    }

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parsed)
    {
        usual.Invoke(parsed);
        if (!Examples.TryGetValue(Name(parsed.CommandResult.Command), out var examples))
            return 0;
        var output = parsed.InvocationConfiguration.Output;
        output.WriteLine("Examples:");
        foreach (var example in examples)
            output.WriteLine("  " + example);
        output.WriteLine();
        return 0;
    }

    /// <summary>The root's own name is that of the running file.</summary>
    private static string Name(Command command) => command is RootCommand ? "coldpath" : command.Name;
}
