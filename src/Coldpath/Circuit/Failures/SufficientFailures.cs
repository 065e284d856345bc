using System.Numerics;

namespace Coldpath.Circuit.Failures;

/// <summary>The minimal combinations of failures that suffice for something.</summary>
/// <param name="Count">How many there are, of no more members than the search allowed.</param>
/// <param name="Sets">The best of them: fewest members first, then in declared order.</param>
public sealed record SufficientFailures(BigInteger Count, IReadOnlyList<FailureSet> Sets);
