using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;

namespace Coldpath.Circuit.Failures;

/// <summary>Failures that suffice together, none of them left out.</summary>
/// <param name="Members">The variables' numbers, in declared order; empty: it comes about with nothing failed.</param>
/// <param name="States">The states of the hazard in which just these have happened.</param>
/// <param name="Story">The shortest way to one of them.</param>
public sealed record FailureSet(IReadOnlyList<int> Members, Diagram States, Story Story);
