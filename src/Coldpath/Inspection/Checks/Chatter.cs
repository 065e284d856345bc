using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class Chatter : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L403",
            Name = "chatter",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "Relays can pull in and drop out without end.",
            Why = "A chattering contactor welds or burns within minutes.",
            Reference = "common practice",
            Remedy =
                "take the device's own opening contact out of its coil circuit, or give it a holding contact",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  11  -> NC K1 -> coil K1 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var group in Restlessness.Chatter(e))
            yield return e.Report(this, group.Devices)
                .Says($"{Evidence.List(group.Devices)} can pull in and drop out without end")
                .After(group.States)
                .Finding;
    }
}
