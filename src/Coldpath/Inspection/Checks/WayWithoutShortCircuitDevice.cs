using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class WayWithoutShortCircuitDevice : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "P201",
            Name = "way-without-short-circuit-device",
            Family = Family.Protection,
            Severity = Severity.Danger,
            Title = "A motor can be fed a way that no short-circuit device protects.",
            Why = "A fault on that way is cleared by nothing near enough or by nothing at all.",
            Reference = "NEC 430.52 and 430.130(B); IEC 60204-1, 7.2",
            Remedy = "put a fuse or breaker pole into each unearthed conductor of the way",
            Example = new(
                "direct-on-line",
                [
                    "MAINS[L1, L2, L3] -> Q0 -> F1 -> Q1 -> F2 -> M1",
                    "fuse                 F1    three-pole 32 A, interrupting 50 kA, in \"starter\"",
                ],
                ["MAINS[L1, L2, L3] -> Q0 -> Q1 -> F2 -> M1", ""]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        foreach (
            var way in e.Ways.Among(
                motor,
                e.Protections.FedWithout(motor, e.Protections.ShortCircuitElements)
            )
        )
            yield return e.Report(this, [motor.Name, .. way.Devices])
                .Says(
                    $"{motor.Name} fed by {Evidence.List(way.Devices)} has no short-circuit device in its way"
                )
                .After(way.States)
                .Finding;
    }
}
