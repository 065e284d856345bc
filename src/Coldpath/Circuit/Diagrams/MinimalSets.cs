using System.Numerics;

namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// The minimal sets of levels that make a function true, held as a zero-suppressed diagram: counted exactly and taken
/// out best first, however many there are.
/// </summary>
public sealed class MinimalSets
{
    private readonly FamilyTable families;
    private readonly Family family;

    /// <param name="table">Where the function lives; its budget and its cancellation hold here too.</param>
    /// <param name="f">An assignment stands for the set of levels that are true in it.</param>
    public MinimalSets(DiagramTable table, Diagram f)
    {
        families = table.Families();
        family = new MinimalSolutions(table, families).Of(table.UpwardClosure(f));
        Count = families.Count(family);
    }

    /// <summary>How many sets there are.</summary>
    public BigInteger Count { get; }

    /// <summary>Nodes of their diagram.</summary>
    public int Nodes => families.NodeCount(family);

    /// <summary>
    /// The sets, cheapest first, those of equal cost in the order in which the list has their levels; taken out one at
    /// a time, so that the first few of a huge family cost little.
    /// </summary>
    /// <param name="levels">All levels that a set may hold, in any order.</param>
    /// <param name="cost">Of one level in a set, not negative; 1 each when null.</param>
    public IEnumerable<IReadOnlyList<int>> Cheapest(
        IReadOnlyCollection<int> levels,
        Func<int, long>? cost = null
    )
    {
        if (families.Support(family).Except(levels).Any())
            throw new ArgumentException("a set holds other levels", nameof(levels));
        return new CheapestSets(families, levels, cost ?? (_ => 1)).Of(family);
    }
}
