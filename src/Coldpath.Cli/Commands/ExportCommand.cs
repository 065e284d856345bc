using System.CommandLine;

namespace Coldpath.Cli.Commands;

/// <summary>export netlist: the flattened panel, from which an outsider can recompute every answer.</summary>
internal static class ExportCommand
{
    public static Command Build(Outside outside) =>
        new("export", "Write a panel for other programs.") { BuildNetlist(outside) };

    private static Command BuildNetlist(Outside outside)
    {
        var file = Arguments.File();
        var output = Arguments.Output();
        var command = new Command("netlist", "Write the flattened panel as JSON.") { file, output };
        command.SetAction(parsed =>
            (int)Run(outside, parsed.GetRequiredValue(file), parsed.GetValue(output))
        );
        return command;
    }

    private static Exit Run(Outside outside, string file, string? output)
    {
        var netlist = Workbench.Netlist(Sources.Read(file, outside));
        if (netlist.Answer is not { } text)
            return Reply.Refuse(outside, netlist);
        var delivery = new Delivery(outside, output);
        delivery.Put(text);
        delivery.Finish();
        return Exit.Clean;
    }
}
