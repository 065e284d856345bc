using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class ControllerLeavesPole : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E111",
            Name = "controller-leaves-pole",
            Family = Family.EnergisedPaths,
            Severity = Severity.Caution,
            Title = "A contactor or starter that is off leaves an unearthed conductor through to the motor.",
            Why =
                "A controller need not open every conductor, but whoever sees the motor standing must not take it for dead.",
            Reference = "NEC 430.84; IEC 60947-4-2 (load terminals live in the off state)",
            Remedy =
                "use a device with a pole in each unearthed conductor, or put a contactor that has ahead of it",
            Example = new(
                "direct-on-line",
                [
                    "contactor            Q1    25 A AC-3, coil 120 V, mirror contacts, in \"starter\"",
                    "MAINS[L1, L2, L3] -> Q0 -> F1 -> Q1 -> F2 -> M1",
                ],
                [
                    "contactor            Q1    two-pole 25 A AC-3, coil 120 V, mirror contacts, in \"starter\"",
                    "MAINS[L1, L2, L3] -> Q0 -> F1\nF1[2, 4] -> Q1 -> F2[1/L1, 3/L2]\nF1[6] -> F2[5/L3]\nF2 -> M1",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var (device, motor, states) in PolesLeftClosed.ByControllers(e))
            yield return e.Report(this, [device, motor.Name])
                .Says($"{device} off leaves {motor.Name} live through a conductor that it does not open")
                .After(states)
                .Finding;
    }
}
