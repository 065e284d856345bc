using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection.Checks;

public sealed class EnergiseToTrip : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F705",
            Name = "energise-to-trip",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title = "One broken wire or open coil takes a stop its effect: it acts by energising something.",
            Why = "A wire that has come off shows nothing until the stop is needed.",
            Reference = "IEC 60204-1, 9.4.1; NFPA 79, 9.4.1; ISO 13850, 4.1.3",
            Remedy = "let the stop open a circuit that holds the motor in, or watch the wire",
            Example = new(
                "two-contactors",
                [
                    "relay                K1 and K2 coil 230 V, linked contacts",
                    "rung 4  10  -> S0:31-32 -> NO K1 -> NO K2 -> coil Q1 -> 2",
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> coil Q2 -> 2",
                    "rung 6  1   -> NO Q1 -> NO Q2 -> P1 -> 2",
                ],
                [
                    "relay                K1 and K2 coil 230 V, linked contacts\nrelay                K3    coil 230 V\npush button          S2    stop",
                    "rung 4  10  -> S0:31-32 -> NO K1 -> NO K2 -> NC K3 -> coil Q1 -> 2",
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> NC K3 -> coil Q2 -> 2",
                    "rung 6  1   -> NO Q1 -> NO Q2 -> P1 -> 2\nrung 7  10  -> NO S2 -> coil K3 -> 2",
                ]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from motor in e.Motors
        from stop in Stops.All(e)
        from set in e.SingleFailures.Defeating(stop, motor, FailureSort.Broken)
        select e.Report(this, [stop.Tag, motor.Name])
            .Says($"{stop.Tag} does not stop {motor.Name} when {FailureWords.Of(set.Members[0])}")
            .After(set)
            .Finding;
}
