using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class CoilBlocked : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L406",
            Name = "coil-blocked",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "A coil can be energised while its armature is held by a mechanical interlock.",
            Why = "An AC coil whose armature cannot close draws its inrush current until it burns.",
            Reference = "common practice",
            Remedy =
                "add the electrical interlock: a normally closed contact of the other device ahead of the coil",
            Example = new(
                "reversing",
                "rung 3  11  -> ( S3 | NO Q2 ) -> NC Q1 -> coil Q2 -> 2",
                "rung 3  11  -> ( S3 | NO Q2 ) -> coil Q2 -> 2"
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var armature in Coils.Armatures(e))
        {
            var states = e.Table.And(e.Settled, e.Blocked(armature));
            if (!states.IsFalse)
                yield return e.Report(this, [armature.Device])
                    .Says(
                        $"{armature.Device}'s coil can stay energised while its interlock holds the armature out"
                    )
                    .After(states)
                    .Finding;
        }
    }
}
