using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class ContactUsedTwice : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "D503",
            Name = "contact-used-twice",
            Family = Family.Description,
            Severity = Severity.Defect,
            Title = "One contact stands in two places.",
            Why = "The two circuits are joined through it: most often a second contact was meant.",
            Reference = "common practice",
            Remedy = "use another contact of the device, or name the node that is shared",
            Example = new(
                "direct-on-line",
                ["rung 3  11  -> NO Q1 -> coil K1 -> 2", "rung 2  11  -> ( S2 | NO Q1 ) -> coil Q1 -> 2"],
                [
                    "rung 3  11  -> Q1:13-14 -> coil K1 -> 2",
                    "rung 2  11  -> ( S2 | Q1:13-14 ) -> coil Q1 -> 2",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        from uses in e.Panel.PartUses().Where(u => u.Contact is not null).GroupBy(u => (u.Device, u.Left))
        from again in uses.Skip(1)
        select e.Report(this, [again.Device])
            .On(again.Span)
            .Related(uses.First().Span, "first used here")
            .Says($"contact {again.Device}:{again.Contact!.Name} is used twice")
            .Finding;
}
