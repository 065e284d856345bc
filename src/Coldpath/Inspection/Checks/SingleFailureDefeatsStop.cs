using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection.Checks;

public sealed class SingleFailureDefeatsStop : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F702",
            Name = "single-failure-defeats-stop",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title =
                "A motor runs on although a stop is pressed or a trip has tripped, because one part has failed.",
            Why =
                "A contactor that has welded or a button that sticks does not stop the motor: somebody must know what does.",
            Reference = "IEC 60204-1, 9.4.2; NFPA 79, 9.4.2; ISO 13849-1 (categories)",
            Remedy =
                "have a second contactor in series drop out as well, and let each be checked before the next start",
            Limits = "earth faults, shorted semiconductors and broken wires are checks of their own",
            Example = new(
                "two-contactors",
                [
                    "rung 5  10  -> S0:41-42 -> NO K2 -> NO K1 -> coil Q2 -> 2",
                    "never M1 runs and S0 pressed, when quiet, even with 1 failure",
                ],
                ["rung 5  10  -> NO Q1 -> coil Q2 -> 2", ""]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from motor in e.Motors
        from stop in Stops.All(e)
        from set in e.SingleFailures.Defeating(stop, motor, FailureSort.Part)
        group (stop, set) by (motor, set.Members[0].Device) into found
        select Told(e, found.Key.motor, [.. found.Select(f => f.stop).Distinct()], found.First().set);

    private Finding Told(Evidence e, Load motor, NetlistDevice[] stops, FailureSet set)
    {
        var (part, next) = (set.Members[0], NextStop.Of(e, motor, set));
        var meant = stops
            .Select(stop => e.SingleFailures.Redundant(motor, stop, set))
            .FirstOrDefault(why => why is not null);
        var all = stops.Select(s => s.Tag).ToArray();
        return e.Report(this, [part.Device, motor.Name, .. all])
            .Grade(next is null || meant is not null ? Severity.Danger : Severity.Note)
            .Says(
                $"{Evidence.List(all)} {(all.Length > 1 ? "do" : "does")} not stop {motor.Name} when {FailureWords.Of(part)}"
                    + (meant is not null ? $", and {meant}" : "")
                    + (next is null ? ": nothing upstream can be opened by hand" : $": {next.Tag} does")
            )
            .After(set)
            .Finding;
    }
}
