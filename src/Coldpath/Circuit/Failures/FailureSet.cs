using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>Failures that suffice together, none of them left out.</summary>
/// <param name="Behaviour">The search that found them.</param>
/// <param name="Members">In declared order; empty: it comes about with nothing failed.</param>
/// <param name="States">The states of the hazard in which just these have happened.</param>
/// <param name="Story">The shortest way to one of them.</param>
public sealed record FailureSet(
    Behaviour Behaviour,
    IReadOnlyList<Variable> Members,
    Diagram States,
    Story Story
)
{
    /// <summary>It comes about only if an uncertain coil pulls or holds.</summary>
    public bool Uncertain => Story.ThroughUncertain;

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
