using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class MissingInterlock : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L405",
            Name = "missing-interlock",
            Family = Family.ControlLogic,
            Severity = Severity.Danger,
            Title =
                "Two contactors whose overlap is a short are not interlocked through contacts of each other.",
            Why =
                "Selector positions and timing keep them apart only as long as every contactor drops when it should.",
            Reference = "common practice; IEC 60204-1, 9.3.4 (reversing contactors)",
            Remedy = "put a normally closed contact of each into the other's coil circuit",
            Example = new(
                "wye-delta",
                [
                    "rung 3  11  -> NO Q1 -> NC K1 -> NC Q2 -> coil Q3 -> 2",
                    "rung 5  11  -> NO K2 -> NC Q3 -> coil Q2 -> 2",
                    "never Q2 and Q3 closed",
                ],
                ["rung 3  11  -> NO Q1 -> NC K1 -> coil Q3 -> 2", "rung 5  11  -> NO K2 -> coil Q2 -> 2", ""]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var gap in e.Interlocks.Gaps())
            yield return e.Report(this, [gap.First, gap.Second])
                .Grade(gap.BothWays ? Severity.Danger : Severity.Defect)
                .Says(
                    gap.BothWays
                        ? $"{gap.First} and {gap.Second} must not be closed together, and neither waits for the other"
                        : $"{gap.Second} does not wait for {gap.First} to have dropped, though {gap.First} waits for it"
                )
                .After(gap.States)
                .Finding;
    }
}
