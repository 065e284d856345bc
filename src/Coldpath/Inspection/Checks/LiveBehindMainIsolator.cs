using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class LiveBehindMainIsolator : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "I303",
            Name = "live-behind-main-isolator",
            Family = Family.Isolation,
            Severity = Severity.Defect,
            Title = "Something on the load side of the open main isolator is live.",
            Why = "Whoever has opened the main isolator expects the panel to be dead behind its door.",
            Reference = "NEC 430.75(A) and 430.113; IEC 60204-1, 5.3.5 (excepted circuits)",
            Remedy =
                "take that supply through an isolating device of its own and label it at both, or open it together with the main isolator",
            Example = new(
                "two-supplies",
                [
                    "waive live-behind-main-isolator on Q01 and Q02 because \"each carries a label that names the other supply\"",
                ],
                [""]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var live in MainIsolators.Findings(e))
            yield return e.Report(this, [live.Isolator, .. live.Points.Select(p => p.Device!)])
                .Points(live.Points.Select(p => p.Name))
                .Says(
                    $"{Evidence.Some(live.Points.Select(p => p.Name))} can be live from {live.Supply} with {live.Isolator} open"
                )
                .After(live.States)
                .Finding;
    }
}
