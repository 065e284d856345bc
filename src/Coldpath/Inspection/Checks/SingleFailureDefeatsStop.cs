using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using Coldpath.Wiring;

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
            Example = new("failing", "", ""),
        };

    protected override IEnumerable<Finding> Search(Evidence e) =>
        from motor in e.Motors
        from stop in Stops.Emergency(e).Concat(Stops.Ordinary(e))
        from set in e.SingleFailures.Defeating(stop, motor)
        where SingleFailures.Sort(set) == FailureSort.Part
        group set by (stop, motor, set.Members[0].Device) into sets
        select Told(e, sets.Key.stop, sets.Key.motor, sets.First());

    private Finding Told(Evidence e, NetlistDevice stop, Load motor, FailureSet set)
    {
        var (part, next) = (set.Members[0], NextStop.Of(e, motor, set));
        var meant = e.SingleFailures.Redundant(motor, set);
        return e.Report(this, [part.Device, motor.Name, stop.Tag])
            .Grade(next is null || meant is not null ? Severity.Danger : Severity.Note)
            .Says(
                $"{stop.Tag} does not stop {motor.Name} when {FailureWords.Of(part)}"
                    + (meant is not null ? $", and {meant}" : "")
                    + (next is null ? ": nothing upstream can be opened by hand" : $": {next.Tag} does")
            )
            .After(set.Story)
            .Finding;
    }
}
