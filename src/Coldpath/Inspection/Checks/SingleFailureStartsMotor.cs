using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection.Checks;

public sealed class SingleFailureStartsMotor : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F701",
            Name = "single-failure-starts-motor",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title = "One failure starts a motor that nobody has told to start.",
            Why = "Whoever stands at the machine has no warning: no control was touched.",
            Reference = "IEC 60204-1, 9.4.1; NFPA 79, 9.4.1",
            Remedy = "put a second contact, from another device, in series with the one that fails",
            Limits =
                "earth faults and shorted semiconductors are checks of their own; that it starts again after a stop only if a coil of doubtful voltage holds is left out",
            Example = new(
                "two-contactors",
                [
                    "rung 4  10  -> S0:31-32 -> NO K1 -> NO K2 -> coil Q1 -> 2",
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> coil Q2 -> 2",
                ],
                [
                    "rung 4  10  -> S0:31-32 -> NO K1 -> coil Q1 -> 2",
                    "rung 5  10  -> S0:41-42 -> NO K1 -> coil Q2 -> 2",
                ]
            ),
        };

    private static readonly FailureSort[] Meant = [FailureSort.Part, FailureSort.Broken];

    protected override IEnumerable<Finding> Search(Evidence e) =>
        e.Motors.SelectMany(motor => Search(e, motor));

    private IEnumerable<Finding> Search(Evidence e, Load motor)
    {
        var starting = e.SingleFailures.Starting(motor, Meant).ToArray();
        foreach (var set in starting)
            yield return Told(e, motor, set, Severity.Danger, "starts by itself");
        // What keeps the motor running in spite of a stop starts it again too: that is one finding, not two.
        var told = starting.Concat(Stops.All(e).SelectMany(stop => e.SingleFailures.Defeating(stop, motor)));
        var known = told.Select(set => set.Members[0].Device).ToHashSet();
        var again = e
            .SingleFailures.Restarting(motor, Meant)
            .Where(set => !set.Uncertain && !known.Contains(set.Members[0].Device));
        foreach (var sets in again.GroupBy(set => set.Members[0].Device))
            // Usual in a simple starter: somebody has let the stop go.
            yield return Told(e, motor, sets.First(), Severity.Note, "starts again without a command");
    }

    private Finding Told(Evidence e, Load motor, FailureSet set, Severity severity, string does) =>
        e.Report(this, [set.Members[0].Device, motor.Name])
            .Grade(severity)
            .Says($"{motor.Name} {does} when {FailureWords.Of(set.Members[0])}")
            .After(set)
            .Finding;
}
