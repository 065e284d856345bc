using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class CoilNeverPulls : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L401",
            Name = "coil-never-pulls",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "A coil never pulls in, whatever is operated.",
            Why = "What it should do never happens, and what waits for its contacts waits for ever.",
            Reference = "common practice",
            Remedy =
                "find the contact in its rung that never closes when the others do, or the missing return",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  11  -> NO Q1 -> NC Q1 -> coil K1 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var armature in Coils.Armatures(e))
            if (!e.Table.Meet(e.Reachable, e.Is(armature, "in")) && !e.HasOpenCoil(armature))
                yield return e.Report(this, [armature.Device])
                    .Says($"{armature.Device} can never pull in")
                    .Finding;
    }
}
