using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;

namespace Coldpath.Inspection;

/// <summary>A finding in the making: what, where, after which story.</summary>
public sealed class Report(Evidence evidence, Card card, IReadOnlyList<string> devices)
{
    private Finding finding = new()
    {
        Code = card.Code,
        Name = card.Name,
        Severity = card.Severity,
        Message = card.Title,
        Location = evidence.PlaceOf(devices),
        Devices = devices,
        Reference = card.Reference,
        Remedy = card.Remedy,
    };

    public Finding Finding => finding;

    /// <summary>The message: lower case but for tags, no full stop.</summary>
    public Report Says(string message) => With(finding with { Message = message });

    public Report Grade(Severity severity) => With(finding with { Severity = severity });

    /// <summary>Where it is, if not at the first device's declaration.</summary>
    public Report On(Span place) => With(finding with { Location = place });

    public Report Points(IEnumerable<string> points) => With(finding with { Points = [.. points] });

    public Report Related(Span place, string text) =>
        With(finding with { Related = [.. finding.Related, new Label(place, text)] });

    /// <summary>The shortest story to one of the states.</summary>
    public Report After(Diagram states) =>
        evidence.Behaviour.ShortestTo(states) is { } story ? After(story) : this;

    public Report After(Story story) =>
        With(finding with { Story = Narration.Tell(story), Uncertain = story.ThroughUncertain });

    /// <summary>The story of the failures. One that rests on an uncertain coil is a note, which says so itself.</summary>
    public Report After(FailureSet set)
    {
        var told = After(set.Story);
        return set.Uncertain
            ? told.With(
                told.finding with
                {
                    Uncertain = false,
                    Severity = Severity.Note,
                    Message = $"{told.finding.Message}, if a coil pulls or holds whose voltage is uncertain",
                }
            )
            : told;
    }

    /// <summary>What is to be seen at the end of the story.</summary>
    public Report Ends(string observation) =>
        With(finding with { Story = [.. finding.Story, new StoryStep(observation)] });

    /// <summary>The story, or the assignment, that refutes an intent.</summary>
    public Report Telling(JudgedIntent judged) => judged.Verdict.Story is { } story ? After(story) : this;

    public Report Along(IEnumerable<string> path) => With(finding with { Path = [.. path] });

    private Report With(Finding changed)
    {
        finding = changed;
        return this;
    }
}
