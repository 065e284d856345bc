using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class EmergencyStopIgnored : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E105",
            Name = "emergency-stop-ignored",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "A motor can run with an emergency stop pressed.",
            Why = "An emergency stop overrides every mode and every way of feeding the motor.",
            Reference = "IEC 60204-1, 9.2.3.4; ISO 13850",
            Remedy = "put the emergency stop ahead of every coil of the motor, the bypass contactor's too",
            Example = new(
                "bypass",
                [
                    "rung 3  100 -> NO K0 -> node 102",
                    "rung 2  100 -> ( S3 | NO K0 ) -> ( S1 at HAND | S1 at AUTO -> B1 ) -> coil K0 -> 2",
                    "rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> NC F3 -> coil K3 -> 2",
                    "rung 4  102 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                    "rung 1  1   -> S0 -> node 100",
                    "stops M1 by S0",
                ],
                [
                    "rung 3  1   -> NO K0 -> node 102",
                    "rung 2  1   -> ( S3 | NO K0 ) -> ( S1 at HAND | S1 at AUTO -> B1 ) -> coil K0 -> 2",
                    "rung 5  102 -> S2 at BYPASS -> NC K1 -> NC K2 -> NC F3 -> coil K3 -> 2",
                    "rung 4  102 -> S0 -> S2 at NORMAL -> NC U1 trip -> NC K3 -> ( coil K1 | coil K2 ) -> 2",
                    "",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        foreach (var stop in Stops.Emergency(e))
        {
            var states = e.Table.AllOf(e.Quiet, e.Runs(motor), Stops.Operated(e, stop));
            if (e.Table.Meet(states, Stops.AllOperated(e)))
                continue; // no stop at all stops it: another finding
            foreach (var way in e.Ways.Among(motor, states))
                yield return e.Report(this, [stop.Tag, motor.Name, .. way.Devices])
                    .Says(
                        $"{stop.Tag} pressed does not stop {motor.Name} fed by {Evidence.List(way.Devices)}"
                    )
                    .After(way.States)
                    .Finding;
        }
    }
}
