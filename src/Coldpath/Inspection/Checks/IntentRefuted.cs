using Coldpath.Circuit.Diagrams;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class IntentRefuted : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "N601",
            Name = "intent-refuted",
            Family = Family.Intent,
            Severity = Severity.Danger,
            Title = "What the panel is meant to do is not so.",
            Why = "The description says one thing in words and another in wires.",
            Reference = "the description itself",
            Remedy = "mend the wiring, or the sentence if it says more than is meant",
            Example = new(
                "direct-on-line",
                ["never M1 runs and S0 pressed, when settled"],
                ["never M1 runs"]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e) =>
        e
            .Intents.Where(judged => judged.Refuted)
            .Select(judged =>
                e.Report(this, judged.Devices)
                    .On(judged.Span)
                    .Points(judged.Verdict.LiveNets.SelectMany(e.Panel.PointsOf))
                    .Says($"not so: {judged.Sentence}{Meaning(judged.Intent)}")
                    .Telling(judged)
                    .Finding
            );

    /// <summary>A way counts only where the load depends on each device of it: that it conducts is not enough.</summary>
    private static string Meaning(Intent intent) =>
        intent is { Form: IntentForm.Can, Via.Count: > 0 and var devices }
            ? $": no state is reached in which {intent.Of} runs and would not without "
                + $"{(devices > 1 ? "each of " : "")}{Evidence.List(intent.Via)}"
            : "";
}
