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
            Example = new("direct-on-line", [], []),
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
