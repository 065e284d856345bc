using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class DuplicateTag : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "D502",
            Name = "duplicate-tag",
            Family = Family.Description,
            Severity = Severity.Defect,
            Title = "Two devices have one tag.",
            Why = "A lock or a measurement goes to the wrong one.",
            Reference = "IEC 81346-1",
            Remedy = "give one of them another tag",
            Example = new(
                "direct-on-line",
                ["push button          S2    start"],
                ["push button          S2    start\npush button          S2    start"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        e.Panel.Duplicates.Select(duplicate =>
            e.Report(this, [duplicate.Tag])
                .On(duplicate.Second)
                .Related(duplicate.First, "first declared here")
                .Says($"{duplicate.Tag} is declared twice; the wiring is checked with the first")
                .Finding
        );
}
