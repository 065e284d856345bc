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
    private const string CutShort = "the search was cut short: other failures may suffice as well";

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
            return answer with { Complete = false, Incomplete = [CutShort] };
        }
    }

    private static IEnumerable<string> Reached(Intent? asked) =>
        asked?.Form == IntentForm.Dead
            ?
            [
                "only states were looked at that something leads to; a 'dead' line in a description speaks of all others too",
            ]
            : [];

    /// <summary>What is found is told even where the search of the rest, or of a story, is cut short.</summary>
    private FailuresAnswer Searched(FailuresAnswer answer, Intent asked)
    {
        var open = new List<FailureSet>();
        var whole = IsWhole(() =>
        {
            foreach (var part in evidence.Failing(answer.Most))
                open.AddRange(Sets(part, asked));
        });
        var found = FailureSet.Minimal(
            FailureSet.Minimal(open).SelectMany(set => set.Uncertain ? Judged(set, asked) : [set])
        );
        var sets = new List<Combination>();
        whole &= found.Take(Told).All(set => IsWhole(() => sets.Add(Combined(set))));
        sets.AddRange(found.Take(Told).Skip(sets.Count).Select(Untold));
        var named = sets.SelectMany(s => s.Failures).ToHashSet();
        var failures = new List<FailureTold>();
        whole &= evidence.AllFailures.Where(named.Contains).All(f => IsWhole(() => failures.Add(Failure(f))));
        return answer with
        {
            Complete = whole && sets.All(s => !s.Uncertain),
            Count = found.Count,
            Sets = sets,
            Failures = failures,
            Incomplete =
            [
                .. whole ? [] : (string[])[CutShort],
                .. sets.Where(s => s.Uncertain).Select(Doubt),
            ],
        };
    }

    private static string Doubt(Combination set) =>
        $"whether {Evidence.List(set.Failures, "no failure")} suffices rests on a coil whose pull-in is uncertain: take it that it does";

    /// <summary>False when there was no room or time to do it.</summary>
    private static bool IsWhole(Action search)
    {
        try
        {
            search();
            return true;
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            return false;
        }
    }

    /// <summary>Of the line as this search has it, with no other failures in it than its own.</summary>
    private static IReadOnlyList<FailureSet> Sets(Behaviour part, Intent asked) =>
        Hazard.Sets(part, part.Netlist.Intents[^1] with { Settled = asked.Settled });

    /// <summary>What only an uncertain coil brings about is put to the solver; without room for that it stays uncertain.</summary>
    private IReadOnlyList<FailureSet> Judged(FailureSet set, Intent asked)
    {
        IReadOnlyList<FailureSet> judged = [set];
        IsWhole(() => judged = Sets(evidence.Judged([.. set.Members.Select(m => m.Name)]), asked));
        return judged;
    }

    private static Combination Combined(FailureSet set) =>
        new([.. set.Members.Select(m => m.Name)], Narration.Tell(set.Story), set.Uncertain);

    private static Combination Untold(FailureSet set) =>
        new([.. set.Members.Select(m => m.Name)], [], set.Uncertain);

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
