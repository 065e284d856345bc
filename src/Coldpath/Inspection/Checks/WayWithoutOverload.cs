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
            Example = new("bypass", [], []),
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
