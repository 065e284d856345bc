using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>Which failures suffice for a condition, and which show themselves before the next one comes.</summary>
public sealed class FailuresQuestion(Evidence evidence)
{
    private IReadOnlyList<Variable> Variables => evidence.Failable.Variables;

    /// <param name="asked">A condition as "never" has it; null asks for all failures one by one.</param>
    /// <param name="sentence">The condition as written.</param>
    /// <param name="most">The most failures in a combination.</param>
    public FailuresAnswer Ask(Intent? asked, string? sentence, int most)
    {
        var answer = new FailuresAnswer
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Question = sentence,
            Most = most,
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = evidence.Netlist.Assumed,
        };
        try
        {
            return asked is null ? answer with { Failures = Told(All) } : Searched(answer, asked);
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            return answer with
            {
                Complete = false,
                Incomplete = ["the search was cut short: other failures may suffice as well"],
            };
        }
    }

    private IEnumerable<int> All =>
        Variables.Index().Where(v => v.Item.Kind == VariableKind.Failure).Select(v => v.Index);

    private FailuresAnswer Searched(FailuresAnswer answer, Intent asked)
    {
        var behaviour = evidence.Failing(answer.Most);
        var hazard = behaviour.Of(asked.When);
        if (asked.Settled)
            hazard = behaviour.Table.And(hazard, behaviour.ReachableSettled);
        var found = new CutSets(behaviour).Of(hazard);
        var sets = found.Sets.Select(Told).ToArray();
        return answer with
        {
            Count = found.Count,
            Sets = sets,
            Failures = Told(found.Sets.SelectMany(s => s.Members).Distinct().Order()),
            Incomplete =
            [
                .. sets.Where(s => s.Uncertain)
                    .Select(s =>
                        $"whether {Evidence.List(s.Failures, "no failure")} suffices rests on a coil whose pull-in is uncertain: take it that it does"
                    ),
            ],
        };
    }

    private Combination Told(FailureSet set) =>
        new(
            [.. set.Members.Select(v => Variables[v].Name)],
            Narration.Tell(set.Story),
            set.Story.ThroughUncertain
        );

    private FailureTold[] Told(IEnumerable<int> failures)
    {
        int[] listed = [.. failures];
        if (listed.Length == 0)
            return [];
        var revealing = new Revealing(evidence.Failing(1));
        return [.. listed.Select(v => Told(revealing.Of(v)))];
    }

    private FailureTold Told(Revealed revealed)
    {
        var variable = Variables[revealed.Failure];
        return new(variable.Name, variable.Device, FailureWords.Of(variable), revealed.Disclosure)
        {
            Shows = [.. revealed.Signs.Select(Says)],
            Story = revealed.Story is { } story ? Narration.Tell(story) : [],
        };
    }

    private string Says(Sign sign) =>
        sign switch
        {
            LoadSign { Runs: var runs } load => IsLamp(load.Load)
                ? $"{load.Load} {(runs ? "lights" : "stays dark")}"
                : $"{load.Load} {(runs ? "runs" : "does not run")}",
            PartSign part =>
                $"{Variables[part.Variable].Name} comes to {Variables[part.Variable].Values[part.Value]}",
            _ => throw new ArgumentException("no such sign", nameof(sign)),
        };

    private bool IsLamp(string load) =>
        evidence.Failable.Loads.First(l => l.Name == load).Modes.Any(m => m.Name == "lit");
}
