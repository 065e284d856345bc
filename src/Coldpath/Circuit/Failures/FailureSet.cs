using Coldpath.Circuit.Sequence;

namespace Coldpath.Circuit.Failures;

/// <summary>Failures that suffice together, none of them left out.</summary>
/// <param name="Members">The variables' numbers, in declared order; empty: it comes about with nothing failed.</param>
/// <param name="Story">The shortest way on which just these happen.</param>
public sealed record FailureSet(IReadOnlyList<int> Members, Story Story);
