using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A failure that nothing shows, and one more with which a claim no longer holds.</summary>
/// <param name="Hidden">The number of the one.</param>
/// <param name="Next">The number of the other.</param>
/// <param name="Story">How both together undo the claim.</param>
public sealed record HiddenPair(int Hidden, int Next, Story Story);

/// <summary>Which failures stay hidden while the description counts on two of something.</summary>
public sealed class HiddenFailures(Evidence evidence)
{
    private readonly Lazy<Revealing> revealing = new(() => new(evidence.Failing(1)));
    private readonly Dictionary<int, Disclosure> known = [];

    private IReadOnlyList<Variable> Variables => evidence.Failable.Variables;

    public string Device(int failure) => Variables[failure].Device;

    public string Says(int failure) => FailureWords.Of(Variables[failure]);

    /// <summary>For a claim that one failure is stood: each hidden one with the first that then undoes it.</summary>
    public IEnumerable<HiddenPair> Behind(JudgedIntent claim)
    {
        var behaviour = evidence.Failing(2);
        var pairs = new CutSets(behaviour)
            .Of(Undone(behaviour, claim.Intent), most: int.MaxValue)
            .Sets.Where(set => set.Members.Count == 2);
        var told = new HashSet<int>();
        foreach (var pair in pairs)
        foreach (var (hidden, next) in new[] { (0, 1), (1, 0) })
            if (IsHidden(pair.Members[hidden]) && told.Add(pair.Members[hidden]))
                yield return new(pair.Members[hidden], pair.Members[next], pair.Story);
    }

    /// <summary>States that the claim excludes; of a stop those in which the load runs on while it is operated.</summary>
    private Diagram Undone(Behaviour behaviour, Intent intent)
    {
        var table = behaviour.Space.Table;
        return intent.Form switch
        {
            IntentForm.Never => table.And(
                behaviour.Of(Whole(intent).When),
                intent.Settled ? behaviour.ReachableSettled : behaviour.Reachable
            ),
            IntentForm.Stops => table.AllOf(
                behaviour.Quiet,
                table.AnyOf(intent.By.Select(o => behaviour.Space.Is(o.Variable, o.Value))),
                behaviour.Of(new Runs(intent.Of!, Turning.Any))
            ),
            _ => Diagram.False,
        };
    }

    /// <summary>The same line with its failures in it.</summary>
    private Intent Whole(Intent intent) =>
        evidence.Failable.Intents[
            evidence.Netlist.Intents.Index().First(i => ReferenceEquals(i.Item, intent)).Index
        ];

    private bool IsHidden(int failure)
    {
        if (!known.TryGetValue(failure, out var disclosure))
            known.Add(failure, disclosure = revealing.Value.Of(failure).Disclosure);
        return disclosure == Disclosure.Hidden;
    }
}
