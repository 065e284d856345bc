using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class RaceChangesRunning : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L404",
            Name = "race-changes-running",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "Which of two relays is faster decides what runs.",
            Why = "The panel behaves one way today and the other way after a contactor has been replaced.",
            Reference = "common practice",
            Remedy = "let one device wait for a contact of the other, or put a timer between",
            Example = new(
                "direct-on-line",
                [
                    "relay                K1    coil 120 V",
                    "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2",
                    "rung 3  11  -> NO Q1 -> coil K1 -> 2",
                ],
                [
                    "relay                K1    coil 120 V\nrelay                K2    coil 120 V",
                    "rung 2  11  -> ( NO K1 | NO Q1 ) -> coil Q1 -> 2",
                    "rung 3  11  -> S2 -> ( NC K2 -> coil K1 | NC K1 -> coil K2 ) -> 2",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var race in Restlessness.RacesThatChangeRunning(e))
            yield return e.Report(this, race.Devices)
                .Says($"what runs depends on which of {Evidence.List(race.Devices)} moves first")
                .After(race.States)
                .Finding;
    }
}
