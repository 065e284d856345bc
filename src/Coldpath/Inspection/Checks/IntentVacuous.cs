using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class IntentVacuous : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "N602",
            Name = "intent-vacuous",
            Family = Family.Intent,
            Severity = Severity.Caution,
            Title = "An intent line speaks of something that never happens.",
            Why = "It is proved whatever the wiring does, so it proves nothing.",
            Reference = "the description itself",
            Remedy = "say it of states that the panel can reach",
            Example = new(
                "direct-on-line",
                ["never M1 runs and S0 pressed, when settled"],
                ["never M1 runs reverse and S0 pressed"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        e
            .Intents.Where(judged => judged.Vacuous)
            .Select(judged =>
                e.Report(this, judged.Devices)
                    .On(judged.Span)
                    .Says($"never put to the test: {judged.Sentence}")
                    .Finding
            );
}
