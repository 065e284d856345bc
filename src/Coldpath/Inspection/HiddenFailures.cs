using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A failure that no single operation shows, and one more with which a claim no longer holds.</summary>
/// <param name="Hidden">The one.</param>
/// <param name="Next">The other.</param>
/// <param name="Story">How both together undo the claim.</param>
public sealed record HiddenPair(Variable Hidden, Variable Next, Story Story);

/// <summary>Which failures no single operation shows, and what that means where the description counts on two of something.</summary>
public sealed class HiddenFailures(Evidence evidence)
{
    private readonly Dictionary<string, Revealed> known = [];

    /// <summary>Whether each failure shows itself, in declared order.</summary>
    public IEnumerable<Revealed> All => evidence.AllFailures.Select(Of);

    /// <summary>Whether the failure shows itself.</summary>
    public Revealed Of(string failure)
    {
        if (known.Count == 0)
            foreach (var part in evidence.Failing(1))
                Learn(part);
        return known[failure];
    }

    /// <summary>For a claim that one failure is stood: each hidden one with the first that then undoes it.</summary>
    public IEnumerable<HiddenPair> Behind(JudgedIntent claim)
    {
        var line = LineOf(claim.Intent);
        var sets = evidence.Failing(2).SelectMany(part => Hazard.Sets(part, part.Netlist.Intents[line]));
        var told = new HashSet<string>();
        foreach (var pair in FailureSet.Minimal(sets).Where(set => set.Members.Count == 2))
        foreach (var (hidden, next) in new[] { (0, 1), (1, 0) })
            if (IsHidden(pair.Members[hidden]) && told.Add(pair.Members[hidden].Name))
                yield return new(pair.Members[hidden], pair.Members[next], pair.Story);
    }

    private int LineOf(Intent intent) =>
        evidence.Netlist.Intents.Index().First(i => ReferenceEquals(i.Item, intent)).Index;

    private bool IsHidden(Variable failure) => Of(failure.Name).Disclosure == Disclosure.Hidden;

    private void Learn(Behaviour part)
    {
        var revealing = new Revealing(part);
        foreach (var failure in part.Space.FailureVariables.Select(v => part.Space.Variables[v]))
            known[failure.Name] = revealing.Of(failure);
    }
}
