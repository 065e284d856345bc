using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>Failures that suffice together, none of them left out.</summary>
/// <param name="Behaviour">The search that found them.</param>
/// <param name="Members">In declared order; empty: it comes about with nothing failed.</param>
/// <param name="States">The states of the hazard in which just these have happened.</param>
/// <param name="Story">The shortest way to one of them.</param>
/// <param name="Uncertain">In all of these states an uncertain coil could move and end it, or had to move to begin it.</param>
public sealed record FailureSet(
    Behaviour Behaviour,
    IReadOnlyList<Variable> Members,
    Diagram States,
    Story Story,
    bool Uncertain
)
{
    /// <summary>Of sets found in several searches the minimal ones, each once: fewest members first, then as found.</summary>
    public static IReadOnlyList<FailureSet> Minimal(IEnumerable<FailureSet> sets)
    {
        var kept = new List<(HashSet<string> Names, FailureSet Set)>();
        foreach (var set in sets.OrderBy(s => s.Members.Count))
        {
            var names = set.Members.Select(m => m.Name).ToHashSet();
            if (!kept.Exists(k => k.Names.IsSubsetOf(names)))
                kept.Add((names, set));
        }
        return [.. kept.Select(k => k.Set)];
    }
}
