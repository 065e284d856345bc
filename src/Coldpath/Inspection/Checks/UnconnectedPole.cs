using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class UnconnectedPole : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "D501",
            Name = "unconnected-pole",
            Family = Family.Description,
            Severity = Severity.Defect,
            Title = "A main pole or a coil is not connected on one side.",
            Why = "Either the panel is unfinished or the description is.",
            Reference = "common practice",
            Remedy = "connect it; where a pole is not needed take a device with fewer",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  11  -> NO Q1 -> K1:A1"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        from open in e.Panel.UnconnectedTerminals().Where(t => e.Devices.NeedsWire(t)).GroupBy(t => t.Device)
        let points = open.Select(t => t.ToString()).ToArray()
        select e.Report(this, [open.Key])
            .Points(points)
            .Says($"{Evidence.List(points)} {(points.Length == 1 ? "is" : "are")} not connected")
            .Finding;
}
