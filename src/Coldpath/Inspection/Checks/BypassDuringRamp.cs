using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class BypassDuringRamp : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E107",
            Name = "bypass-during-ramp",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A bypass contactor can close while the starter conducts and is not at full speed.",
            Why =
                "The starter's output is not the line's: closing across it drives line current through semiconductors in mid-ramp, and a drive's output is destroyed at once.",
            Reference = "common practice; IEC 60947-4-2 (bypassed controllers)",
            Remedy =
                "interlock the bypass contactor with the starter's run command, or let the starter's own full-speed contact close it",
            Example = new(
                "bypass",
                ["rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> NC F3 -> coil K3 -> 2"],
                ["rung 5  102 -> S2 at BYPASS -> NC F3 -> coil K3 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var bypass in Bypasses.In(e))
        {
            var states = e.Table.AllOf(
                e.Reachable,
                e.Devices.AnyClosed(bypass.Contactor),
                e.Devices.AnyClosed(bypass.Starter),
                !e.Devices.InState(bypass.Starter, "full speed"),
                bypass.SideBySide
            );
            if (!states.IsFalse)
                yield return e.Report(this, [bypass.Contactor, bypass.Starter])
                    .Says(
                        $"{bypass.Contactor} can be closed while {bypass.Starter} conducts and is not at full speed{e.Passing(states)}"
                    )
                    .After(states)
                    .Finding;
        }
    }
}
