using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class IsolatorLeavesPole : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "E110",
            Name = "isolator-leaves-pole",
            Family = Family.EnergisedPaths,
            Severity = Severity.Danger,
            Title = "An open isolator leaves an unearthed conductor through to the motor.",
            Why = "The motor stands still and its terminals are live.",
            Reference = "NEC 430.103; IEC 60204-1, 5.3.3",
            Remedy = "use a device that opens every unearthed conductor",
            Example = new(
                "direct-on-line",
                [
                    "disconnect           Q0    63 A, lockable, visible break, in \"incoming\"",
                    "MAINS[L1, L2, L3] -> Q0 -> F1 -> Q1 -> F2 -> M1",
                    "dead  M1 when Q0 open",
                ],
                [
                    "disconnect           Q0    two-pole 63 A, lockable, visible break, in \"incoming\"",
                    "MAINS[L1, L2] -> Q0 -> F1[1, 3]\nMAINS[L3] -> F1[5]\nF1 -> Q1 -> F2 -> M1",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        foreach (var (device, motor, states) in PolesLeftClosed.ByIsolators(e))
            yield return e.Report(this, [device, motor.Name])
                .Says($"{device} open leaves {motor.Name} live through a conductor that it does not open")
                .After(states)
                .Finding;
    }
}
