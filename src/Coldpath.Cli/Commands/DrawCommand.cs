using System.CommandLine;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Cli.Commands;

/// <summary>draw: the panel as sheets of a drawing.</summary>
internal static class DrawCommand
{
    public static Command Build(Outside outside)
    {
        var file = Arguments.File();
        var options = new DrawOptions();
        var command = new Command(
            "draw",
            "Draw a panel: the wiring, a state of it, or what a finding is about."
        )
        {
            file,
        };
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            var source = Sources.Read(parsed.GetRequiredValue(file), outside);
            var drawn = Workbench.Draw(
                source,
                options.Request(parsed),
                options.Show(parsed),
                outside.Interrupted
            );
            outside.Interrupted.ThrowIfCancellationRequested();
            return (int)(
                drawn.Answer is { } drawing
                    ? new DrawingDelivery(outside, options.Target(parsed)).Put(drawing)
                    : Reply.Refuse(outside, drawn)
            );
        });
        return command;
    }
}
