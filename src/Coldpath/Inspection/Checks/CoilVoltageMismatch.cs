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
            Example = new("direct-on-line", "contactor            Q1    25 A AC-3, coil 230 V, mirror contacts, in \"starter\"", "contactor            Q1    25 A AC-3, coil 24 V, mirror contacts, in \"starter\""),
        };

    public override IEnumerable<Finding> Look(Evidence e)

     {
         foreach (var coil in e.RatedCoils)
         foreach (var (volts, states) in e.WrongVoltages(coil))
             yield return e.Report(this, [coil.Device])
                 .Says($"{coil.Device}'s {coil.Rated:0.#} V coil can be fed with {volts:0.#} V")
                 .After(states)
                 .Finding;
     }
}
