using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>One finding a defect: what merely repeats another's story is told with it.</summary>
public static class Subsumption
{
    private const string RefutedIntent = "intent-refuted";

    /// <summary>
    /// Refuted intents whose story is that of another finding become a label on it; all other findings stay as they
    /// are and in order.
    /// </summary>
    public static IReadOnlyList<Finding> Merge(IReadOnlyList<Finding> findings)
    {
        var kept = findings.Where(f => f.Name != RefutedIntent).ToList();
        foreach (var intent in findings.Where(f => f.Name == RefutedIntent))
        {
            var at = kept.FindIndex(f => f.Name != RefutedIntent && TellsTheSame(f, intent));
            if (at < 0)
                kept.Add(intent);
            else
                kept[at] = kept[at] with
                {
                    Related = [.. kept[at].Related, new Label(intent.Location, "this is therefore not so")],
                };
        }
        return kept;
    }

    /// <summary>As grave, about a device in common, nothing having failed, and one story begins with all that the other tells.</summary>
    private static bool TellsTheSame(Finding finding, Finding intent)
    {
        if (
            finding.Severity < intent.Severity
            || finding.Story.Any(step => step.Mover == "failure")
            || finding.Story.Count == 0
            || intent.Story.Count == 0
            || !finding.Devices.Intersect(intent.Devices).Any()
        )
            return false;
        var (shorter, longer) =
            finding.Story.Count <= intent.Story.Count
                ? (finding.Story, intent.Story)
                : (intent.Story, finding.Story);
        return shorter.Zip(longer).All(steps => steps.First == steps.Second);
    }
}
