using System.CommandLine;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>explain: what a finding means, by its code or name; without one, the list of all.</summary>
internal static class ExplainCommand
{
    public static Command Build(Outside outside)
    {
        var check = new Argument<string?>("CODE|NAME")
        {
            Description = "such as E101 or way-without-overload; none lists them all",
            HelpName = "CODE|NAME",
            Arity = ArgumentArity.ZeroOrOne,
        };
        check.CompletionSources.Add(_ => Workbench.Cards.SelectMany(c => new[] { c.Name, c.Code }));
        var command = new Command(
            "explain",
            "Explain a check: what it means, why it matters, how to put it right."
        )
        {
            check,
        };
        command.SetAction(parsed => (int)Run(outside, parsed.GetValue(check)));
        return command;
    }

    private static Exit Run(Outside outside, string? wanted)
    {
        if (wanted is null)
            Terminal.Print(outside, ExplainText.List(Workbench.Cards));
        else if (Find(wanted) is { } card)
            Terminal.Print(outside, ExplainText.Of(card));
        else
            throw new UnreadableException(Near.Unknown("check", wanted, Workbench.Cards.Select(c => c.Name)));
        return Exit.Clean;
    }

    private static Card? Find(string wanted) =>
        Workbench.Cards.FirstOrDefault(c =>
            c.Name == wanted || string.Equals(c.Code, wanted, StringComparison.OrdinalIgnoreCase)
        );
}
