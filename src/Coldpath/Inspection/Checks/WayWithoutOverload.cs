using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class WayWithoutOverload : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "P202",
            Name = "way-without-overload",
            Family = Family.Protection,
            Severity = Severity.Defect,
            Title = "A motor can run a way that no overload relay watches.",
            Why = "A stalled or single-phased motor burns out while everything else looks well.",
            Reference = "NEC 430.32 and 430.124(B); IEC 60204-1, 7.3",
            Remedy =
                "put an overload relay into that way: a bypass needs its own where the starter is left out",
            Limits = "Whether the setting suits the motor is another question.",
            Example = new(
                "bypass",
                [
                    "MAINS[L1, L2, L3] -> Q1 -> ( F1 -> K1 -> U1 -> K2 | F2 -> K3 -> F3 ) -> Q2 -> M1",
                    "overload relay       F3    class 10, range 90 A to 150 A, set 96 A, in \"bypass\"",
                    "rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> NC F3 -> coil K3 -> 2",
                ],
                [
                    "MAINS[L1, L2, L3] -> Q1 -> ( F1 -> K1 -> U1 -> K2 | F2 -> K3 ) -> Q2 -> M1",
                    "",
                    "rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> coil K3 -> 2",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        foreach (
            var way in e.Ways.Among(
                motor,
                e.Protections.FedWithout(motor, e.Protections.OverloadElements(motor))
            )
        )
            yield return e.Report(this, [motor.Name, .. way.Devices])
                .Says(
                    $"{motor.Name} fed by {Evidence.List(way.Devices)} has no overload protection of its own"
                )
                .After(way.States)
                .Finding;
    }
}
