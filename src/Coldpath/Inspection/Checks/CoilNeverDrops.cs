using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class CoilNeverDrops : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L402",
            Name = "coil-never-drops",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "A coil that has pulled in never drops out while the panel is powered.",
            Why = "Only the isolator stops what it runs.",
            Reference = "common practice; IEC 60204-1, 9.2.3",
            Remedy = "put a stop into its rung",
            Limits = "A relay that is meant to stand in as long as there is power is reported too: waive it.",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                ["rung 3  1   -> ( NO Q1 | NO K1 ) -> coil K1 -> 2"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var armature in Coils.Armatures(e))
            if (Coils.NeverDrops(e, armature) is { IsFalse: false } states)
                yield return e.Report(this, [armature.Device])
                    .Says($"{armature.Device} once in never drops out while the panel is powered")
                    .After(states)
                    .Finding;
    }
}
