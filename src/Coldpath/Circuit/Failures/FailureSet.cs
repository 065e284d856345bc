using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>Failures that suffice together, none of them left out.</summary>
public sealed class FailureSet
{
    private readonly Lazy<Story> story;

    /// <param name="behaviour">The search that found them.</param>
    /// <param name="members">In declared order; empty: it comes about with nothing failed.</param>
    /// <param name="states">The states of the hazard in which just these have happened.</param>
    /// <param name="uncertain">It comes about only if an uncertain coil pulls or holds.</param>
    /// <param name="tell">Finds the shortest way to one of the states; of most sets nobody asks for it.</param>
    internal FailureSet(
        Behaviour behaviour,
        IReadOnlyList<Variable> members,
        Diagram states,
        bool uncertain,
        Func<Story> tell
    )
    {
        (Behaviour, Members, States, Uncertain) = (behaviour, members, states, uncertain);
        story = new(tell);
    }

    /// <summary>The search that found them.</summary>
    public Behaviour Behaviour { get; }

    /// <summary>In declared order; empty: it comes about with nothing failed.</summary>
    public IReadOnlyList<Variable> Members { get; }

    /// <summary>The states of the hazard in which just these have happened.</summary>
    public Diagram States { get; }

    /// <summary>It comes about only if an uncertain coil pulls or holds.</summary>
    public bool Uncertain { get; }

    /// <summary>The shortest way to one of the states.</summary>
    public Story Story => story.Value;

    /// <summary>
    /// Of sets found in several searches the minimal ones, each once: those that surely suffice, fewest members first,
    /// then as found; then the uncertain ones that contain none of these.
    /// </summary>
    public static IReadOnlyList<FailureSet> Minimal(IEnumerable<FailureSet> sets)
    {
        var kept = new List<(HashSet<string> Names, FailureSet Set)>();
        foreach (var set in sets.OrderBy(s => s.Uncertain).ThenBy(s => s.Members.Count))
        {
            var names = set.Members.Select(m => m.Name).ToHashSet();
            if (!kept.Exists(k => k.Names.IsSubsetOf(names)))
                kept.Add((names, set));
        }
        return [.. kept.Select(k => k.Set)];
    }
}
