using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection.Checks;

public sealed class ShortedSemiconductor : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F704",
            Name = "shorted-semiconductor",
            Family = Family.Failures,
            Severity = Severity.Caution,
            Title =
                "With one semiconductor shorted the motor stays live when it is stopped, and nothing upstream is told to open.",
            Why =
                "A shorted thyristor is the usual way in which a starter fails; the current then flows in two legs and nobody sees it.",
            Reference = "IEC 60947-4-2, 8.2.5; common practice",
            Remedy =
                "let the trip of the starter, or the stop, drop a contactor or a shunt trip upstream of it",
            Example = new(
                "bypass",
                [
                    "rung 4  102 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                    "rung 7  1   -> NO K2 -> input U1 run -> 2",
                ],
                [
                    "rung 4  1   -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                    "rung 7  102 -> NO K2 -> input U1 run -> 2",
                ]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from motor in e.Motors
        from set in e.SingleFailures.LeftLive(motor, FailureSort.Semiconductor)
        group set by (set.Members[0].Device, motor.Name) into sets
        select e.Report(this, [sets.Key.Device, sets.Key.Name])
            .Says(
                $"{sets.Key.Name} stays {e.Words.Live} through {sets.Key.Device} with every stop pressed when {FailureWords.Of(sets.First().Members[0])}, and nothing upstream opens"
            )
            .After(sets.First())
            .Finding;
}
