using System.Globalization;
using Coldpath.Circuit.Diagrams;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>Why a point is live: the shortest story to a state in which it is, or that there is none.</summary>
public sealed class WhyQuestion(Evidence evidence)
{
    public WhyAnswer Ask(Point point)
    {
        var answer = new WhyAnswer
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Point = point.Name,
            CanBeLive = Verdict.Open,
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = evidence.Netlist.Assumed,
        };
        try
        {
            return Answer(answer, point);
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            return answer with { Incomplete = ["the search was cut short: take the point as live"] };
        }
    }

    private WhyAnswer Answer(WhyAnswer answer, Point point)
    {
        var behaviour = evidence.Behaviour;
        var live = evidence.Network.Live(point.Net);
        var story =
            behaviour.ShortestTo(evidence.Table.And(live, evidence.Settled)) ?? behaviour.ShortestTo(live);
        if (story is null && behaviour.Unjudged.ShortestTo(live) is { } doubted)
            return answer with
            {
                CanBeLive = Verdict.Open,
                Reach = new Reaches(evidence, doubted.End).Of(point),
                Story = Narration.Tell(doubted),
                Incomplete =
                [
                    "only a calculation rules the story out, with the usual burdens where none are given: take the point as live",
                ],
            };
        if (story is null)
            return answer with { CanBeLive = Verdict.No, Proof = Proof(point) };
        return answer with
        {
            CanBeLive = story.ThroughUncertain ? Verdict.Open : Verdict.Yes,
            Reach = new Reaches(evidence, story.End).Of(point),
            Story = Narration.Tell(story),
            Incomplete = story.ThroughUncertain
                ? ["the story rests on a coil whose pull-in is uncertain: take the point as live"]
                : [],
        };
    }

    private string Proof(Point point)
    {
        var states = evidence
            .Behaviour.Space.Count(evidence.Settled)
            .ToString("N0", CultureInfo.InvariantCulture);
        return $"None of the {states} states that the panel can reach, passing ones included, makes {point.Name} {evidence.Words.Live} while no more fails. "
            + "That is no permission to touch it: contacts weld and wires break. Ask what isolates it, and test.";
    }
}
