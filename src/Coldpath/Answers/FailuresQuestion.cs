using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>Which failures suffice for a condition, and which show themselves before the next one comes.</summary>
public sealed class FailuresQuestion(Evidence evidence)
{
    /// <summary>How many combinations are told with their stories.</summary>
    private const int Told = 20;

    /// <param name="asked">The panel's last line: what must not be; null asks for all failures one by one.</param>
    /// <param name="sentence">The condition or the line as written.</param>
    /// <param name="line">It was written as a line, so that failures undo it and do not bring it about.</param>
    /// <param name="most">The most failures in a combination.</param>
    public FailuresAnswer Ask(Intent? asked, string? sentence, bool line, int most)
    {
        var answer = new FailuresAnswer
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Question = sentence,
            IsLine = line,
            Most = most,
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = [.. evidence.Netlist.Assumed, .. Reached(asked)],
        };
        try
        {
            return asked is null
                ? answer with
                {
                    Failures = [.. evidence.AllFailures.Select(Failure)],
                }
                : Searched(answer, asked);
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

    private static IEnumerable<string> Reached(Intent? asked) =>
        asked?.Form == IntentForm.Dead
            ?
            [
                "only states were looked at that something leads to; a 'dead' line in a description speaks of all others too",
            ]
            : [];

    private FailuresAnswer Searched(FailuresAnswer answer, Intent asked)
    {
        var open = FailureSet.Minimal(evidence.Failing(answer.Most).SelectMany(part => Sets(part, asked)));
        var found = FailureSet.Minimal(open.SelectMany(set => set.Uncertain ? Judged(set, asked) : [set]));
        var sets = found.Take(Told).Select(Combined).ToArray();
        var named = sets.SelectMany(s => s.Failures).ToHashSet();
        return answer with
        {
            Complete = sets.All(s => !s.Uncertain),
            Count = found.Count,
            Sets = sets,
            Failures = [.. evidence.AllFailures.Where(named.Contains).Select(Failure)],
            Incomplete =
            [
                .. sets.Where(s => s.Uncertain)
                    .Select(s =>
                        $"whether {Evidence.List(s.Failures, "no failure")} suffices rests on a coil whose pull-in is uncertain: take it that it does"
                    ),
            ],
        };
    }

    /// <summary>Of the line as this search has it, with no other failures in it than its own.</summary>
    private static IReadOnlyList<FailureSet> Sets(Behaviour part, Intent asked) =>
        Hazard.Sets(part, part.Netlist.Intents[^1] with { Settled = asked.Settled });

    /// <summary>What only an uncertain coil brings about is put to the solver.</summary>
    private IReadOnlyList<FailureSet> Judged(FailureSet set, Intent asked) =>
        Sets(evidence.Judged([.. set.Members.Select(m => m.Name)]), asked);

    private static Combination Combined(FailureSet set) =>
        new([.. set.Members.Select(m => m.Name)], Narration.Tell(set.Story), set.Uncertain);

    private FailureTold Failure(string name)
    {
        var revealed = evidence.HiddenFailures.Of(name);
        var variable = revealed.Failure;
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
            PartSign part => $"{part.Variable.Name} {(part.Stays ? "stays" : "comes to")} {part.Word}",
            _ => throw new ArgumentException("no such sign", nameof(sign)),
        };

    private bool IsLamp(string load) =>
        evidence.Netlist.Loads.First(l => l.Name == load).Modes.Any(m => m.Name == "lit");
}
