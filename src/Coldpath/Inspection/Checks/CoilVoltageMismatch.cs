using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class CoilVoltageMismatch : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L407",
            Name = "coil-voltage-mismatch",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title = "A coil can be fed with a voltage that it is not made for.",
            Why = "Too low and it hums or does not pull; too high and it burns.",
            Reference = "IEC 60947-4-1 (85 % to 110 % of rated control supply voltage)",
            Remedy = "fit a coil for the voltage of the circuit, or feed it from the right one",
            Example = new(
                "direct-on-line",
                ["relay                K1    coil 120 V"],
                ["relay                K1    coil 24 V"]
            ),
        };

    public override string? Lacks(Evidence e)
    {
        var unrated = Coils.Armatures(e).Where(a => !Coils.IsRated(a)).Select(a => a.Device).ToArray();
        return unrated.Length == 0 ? null : $"no coil voltage is given for {Evidence.List(unrated)}";
    }

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var armature in Coils.Armatures(e))
        foreach (var wrong in Coils.WrongVoltages(e, armature))
            yield return e.Report(this, [armature.Device])
                .Says(
                    $"{armature.Device}'s coil, made for {wrong.Low:0} V to {wrong.High:0} V, can be fed with {wrong.Volts:0} V"
                )
                .After(wrong.States)
                .Finding;
    }
}
