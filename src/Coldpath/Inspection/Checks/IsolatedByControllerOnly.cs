using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class IsolatedByControllerOnly : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "I302",
            Name = "isolated-by-controller-only",
            Family = Family.Isolation,
            Severity = Severity.Danger,
            Title = "A section can be switched off only by devices that do not isolate.",
            Why =
                "A contactor, a semiconductor or a control switch is not an isolating device: it closes by itself, leaks, or cannot be locked.",
            Reference = "NEC 430.109; IEC 60947-1 (suitability for isolation); OSHA 1910.147(b)",
            Remedy = "put an isolating device ahead of the section",
            Example = new(
                "direct-on-line",
                [
                    "disconnect           Q0    63 A, lockable, visible break, in \"incoming\"",
                    "MAINS[L1, L2, L3] -> Q0 -> F1 -> Q1 -> F2 -> M1",
                    "dead  M1 when Q0 open",
                ],
                [
                    "disconnect           Q0    two-pole 63 A, lockable, visible break, in \"incoming\"",
                    "MAINS[L1, L2] -> Q0\nMAINS[L1, L2, L3] -> F1 -> Q1 -> F2 -> M1",
                    "",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        if (e.Sections.NotIsolated(byContacts: true) is { } section)
            yield return e.Report(this, section.Devices)
                .Points(section.Points)
                .Says(
                    $"{Evidence.Some(section.Devices)} can be switched off only by devices that do not isolate"
                )
                .Finding;
    }
}
