using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class RunsWithStopsPressed : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E104",
            Name = "runs-with-stops-pressed",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A motor can run although every stop is pressed and every selector stands at OFF.",
            Why = "Somebody who has pressed the stop believes that the machine stands.",
            Reference = "IEC 60204-1, 9.2.3; NFPA 79, 9.2",
            Remedy =
                "put the stops and the OFF position into the part of the circuit that every coil of the motor shares",
            Example = new(
                "direct-on-line",
                [
                    "rung 1  1   -> NC F2 -> S0 -> S1 -> node 11",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "never M1 runs and S0 pressed, when settled",
                    "stops M1 by S1",
                ],
                [
                    "rung 1  1   -> NC F2 -> node 12 -> S0 -> S1 -> node 11",
                    "rung 2  12  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        {
            var states = e.Table.AllOf(e.Quiet, e.Runs(motor), Stops.AllOperated(e));
            if (!states.IsFalse)
                yield return e.Report(this, [motor.Name])
                    .Says($"{motor.Name} can run with every stop pressed and every selector at OFF")
                    .After(states)
                    .Finding;
        }
    }
}
