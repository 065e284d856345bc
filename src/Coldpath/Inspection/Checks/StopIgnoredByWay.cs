using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class StopIgnoredByWay : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E106",
            Name = "stop-ignored-by-way",
            Family = Family.EnergisedPaths,
            Severity = Severity.Defect,
            Title = "A stop that stops a motor fed one way does not stop it fed another way.",
            Why = "The hand on the stop does not know which way the motor is fed.",
            Reference = "IEC 60204-1, 9.2.3; common practice",
            Remedy = "put the stop into the part of the circuit that every way shares",
            Example = new(
                "bypass",
                [
                    "relay                K0    coil 120 V",
                    "rung 4  102 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                ],
                [
                    "relay                K0    coil 120 V\npush button          S4    stop",
                    "rung 4  102 -> S4 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        foreach (var stop in Stops.Ordinary(e))
        {
            var running = e.Table.AllOf(e.Quiet, e.Runs(motor), Stops.Operated(e, stop));
            var ignoring = e.Ways.Of(motor).Where(way => e.Table.Meet(way.States, running)).ToArray();
            if (ignoring.Length == e.Ways.Of(motor).Count)
                continue; // this stop is not meant for this motor
            foreach (var way in ignoring)
                yield return e.Report(this, [stop.Tag, motor.Name, .. way.Devices])
                    .Says(
                        $"{stop.Tag} does not stop {motor.Name} fed by {Evidence.List(way.Devices)}, though it does otherwise"
                    )
                    .After(e.Table.And(way.States, running))
                    .Finding;
        }
    }
}
