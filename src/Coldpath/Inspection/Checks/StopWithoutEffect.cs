using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class StopWithoutEffect : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E112",
            Name = "stop-without-effect",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A stop button stops no motor, whichever way it is fed.",
            Why = "Whoever presses it relies on it, and finds out when it is too late.",
            Reference = "IEC 60204-1, 9.2.3; common practice",
            Remedy =
                "put the stop ahead of the start and its holding contact, or call the button something else",
            Example = new(
                "direct-on-line",
                [
                    "rung 1  1   -> NC F2 -> S0 -> S1 -> node 11",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "stops M1 by S1",
                ],
                [
                    "rung 1  1   -> NC F2 -> S0 -> node 11",
                    "rung 2  11  -> ( S1 -> S2 | NO Q1 ) -> coil Q1 -> 2",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        var running = e.Motors.Where(m => e.Ways.Of(m).Count > 0).ToArray();
        if (running.Any(m => e.Table.Meet(e.Table.And(e.Quiet, e.Runs(m)), Stops.AllOperated(e))))
            yield break; // no stop at all stops it: another finding
        foreach (var stop in Stops.Ordinary(e).Where(d => d.Use == ControlUse.Stop && IsWired(e, d)))
            if (running.Length > 0 && running.All(m => IsIgnored(e, stop, m)))
                yield return e.Report(this, [stop.Tag, .. running.Select(m => m.Name)])
                    .Says($"{stop.Tag} does not stop {Evidence.List(running.Select(m => m.Name))}")
                    .After(Ignoring(e, stop, running[0]))
                    .Finding;
    }

    /// <summary>Every way runs the motor with the stop pressed.</summary>
    private static bool IsIgnored(Evidence e, NetlistDevice stop, Load motor) =>
        e.Ways.Of(motor).All(way => e.Table.Meet(way.States, Ignoring(e, stop, motor)));

    private static Circuit.Diagrams.Diagram Ignoring(Evidence e, NetlistDevice stop, Load motor) =>
        e.Table.AllOf(e.Quiet, e.Runs(motor), Stops.Operated(e, stop));

    /// <summary>One that is wired to nothing is told as such.</summary>
    private static bool IsWired(Evidence e, NetlistDevice stop) => e.Devices.Elements(stop.Tag).Any();
}
