using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>The isolating sets of a question, best first.</summary>
internal sealed record RankedSets
{
    /// <summary>The best of them; none when no set isolates.</summary>
    public required IReadOnlyList<IReadOnlyList<IsolationAct>> Best { get; init; }

    /// <summary>How many there are; null when the node budget did not do for all of them.</summary>
    public required BigInteger? Count { get; init; }

    /// <param name="isolators">What can be done.</param>
    /// <param name="sets">The sets for the targets.</param>
    /// <param name="most">How many to take out.</param>
    public static RankedSets Of(Isolators isolators, IsolatingSets sets, int most)
    {
        if (!sets.AreEnough(isolators.Acts.Select(a => a.Name)))
            return new() { Best = [], Count = 0 };
        try
        {
            return new() { Best = [.. sets.Cheapest(Cost).Take(most)], Count = sets.Count };
        }
        catch (DiagramLimitException)
        {
            return new() { Best = [One(isolators, sets)], Count = null };
        }
    }

    /// <summary>
    /// One minimal set without looking at the others: of all acts those that can be left out are, the least wanted first.
    /// </summary>
    private static IReadOnlyList<IsolationAct> One(Isolators isolators, IsolatingSets sets)
    {
        var kept = isolators.Acts.ToList();
        foreach (var act in isolators.Acts.Reverse().OrderByDescending(Cost))
        {
            var without = kept.Where(other => other != act).ToList();
            if (sets.AreEnough(without.Select(a => a.Name)))
                kept = without;
        }
        return kept;
    }

    /// <summary>
    /// Fewest devices that need a further measure, then fewest that cannot be locked, then fewest without a visible
    /// break, then fewest locks.
    /// </summary>
    private static long Cost(IsolationAct act)
    {
        if (act.Device?.Isolates is not { } isolates)
            return 1;
        return 1
            + (isolates.Visible ? 0 : 100)
            + (isolates.Lockable ? 0 : 10_000)
            + (isolates.Rank > 1 ? 1_000_000 : 0);
    }
}
