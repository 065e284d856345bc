using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class StarterHalfIsolated : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E108",
            Name = "starter-half-isolated",
            Family = Family.EnergisedPaths,
            Severity = Severity.Defect,
            Title = "The bypass can carry the motor while only one side of the starter is open.",
            Why = "The starter then stands live from one side behind a panel that says bypass.",
            Reference = "common practice",
            Remedy = "let the line and the output contactor of the starter open and close together",
            Example = new(
                "bypass",
                [
                    "rung 4  102 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                    "rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> NC F3 -> coil K3 -> 2",
                ],
                [
                    "rung 4  102 -> NC U1 trip -> ( coil K1 | S2 at NORMAL -> NC K3 -> coil K2 ) -> 2",
                    "rung 5  102 -> S2 at BYPASS -> NC K2 -> NC F3 -> coil K3 -> 2",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var bypass in Bypasses.In(e).Where(b => b.Neighbours.Count > 1))
        {
            var differ = e.Table.And(
                e.Table.AnyOf(bypass.Neighbours.Select(e.Devices.AnyClosed)),
                !e.Table.AllOf(bypass.Neighbours.Select(e.Devices.AnyClosed))
            );
            var states = e.Table.AllOf(e.Settled, bypass.Carrying, differ);
            if (!states.IsFalse)
                yield return e.Report(this, [bypass.Contactor, .. bypass.Neighbours])
                    .Says(
                        $"{bypass.Contactor} can carry {bypass.Motor} while {Evidence.List(bypass.Neighbours)} stand differently"
                    )
                    .After(states)
                    .Finding;
        }
    }
}
