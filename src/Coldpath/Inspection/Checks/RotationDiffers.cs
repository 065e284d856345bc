using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class RotationDiffers : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E109",
            Name = "rotation-differs",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "The direction of rotation differs between two ways of feeding a motor.",
            Why = "A pump or a fan that turns backwards on the bypass wrecks itself or the plant.",
            Reference = "common practice",
            Remedy =
                "cross two conductors of one way, or declare the contactors a reversing pair if that is what they are",
            Example = new(
                "bypass",
                ["MAINS[L1, L2, L3] -> Q1 -> ( F1 -> K1 -> U1 -> K2 | F2 -> K3 -> F3 ) -> Q2 -> M1"],
                [
                    "MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> U1 -> K2 -> Q2 -> M1\nQ1 -> F2 -> K3 -> F3 -> Q2[3/L2, 1/L1, 5/L3]",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var motor in e.Motors)
        {
            var ways = e.Ways.ByDirection(motor).ToArray();
            foreach (var group in ways.Where(g => g.Count > 1))
            {
                var forward = group.FirstOrDefault(w =>
                    e.Table.Meet(w.States, e.Runs(motor, Turning.Forward))
                );
                var reverse = group.FirstOrDefault(w =>
                    e.Table.Meet(w.States, e.Runs(motor, Turning.Reverse))
                );
                if (forward is null || reverse is null)
                    continue;
                yield return e.Report(this, [motor.Name, .. forward.Devices, .. reverse.Devices])
                    .Says(
                        $"{motor.Name} turns forward fed by {Evidence.List(forward.Devices)} and backward fed by {Evidence.List(reverse.Devices)}"
                    )
                    .After(e.Table.And(reverse.States, e.Runs(motor, Turning.Reverse)))
                    .Finding;
            }
        }
    }
}
