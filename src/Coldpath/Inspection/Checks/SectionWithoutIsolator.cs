using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class SectionWithoutIsolator : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "I301",
            Name = "section-without-isolator",
            Family = Family.Isolation,
            Severity = Severity.Danger,
            Title = "No device at all can make a section dead.",
            Why = "Whoever has to work there has nothing to open and lock.",
            Reference = "NEC 430.102; IEC 60204-1, 5.3",
            Remedy = "put an isolating device between the supply and the section",
            Example = new(
                "direct-on-line",
                ["Q0[L1] -> F3 -> T1:H1", "Q0[L2] -> F5 -> T1:H4"],
                ["MAINS[L1] -> F3 -> T1:H1", "MAINS[L2] -> F5 -> T1:H4"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        if (e.Sections.NotIsolated(byContacts: false) is { } section)
            yield return e.Report(this, section.Devices)
                .Points(section.Points)
                .Says($"nothing can be opened that makes {Evidence.Some(section.Devices)} {e.Words.Dead}")
                .Finding;
    }
}
