using System.Numerics;

namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// Zero-suppressed decision diagrams (S. Minato, "Zero-suppressed BDDs for set manipulation in combinatorial problems",
/// DAC 1993): families of sets of levels, in which a level that a set does not hold costs no node. Families may be
/// astronomically large; they stay implicit, and only their count or their cheapest members are taken out.
/// </summary>
/// <remarks>Not thread safe: one table serves one question.</remarks>
public sealed partial class FamilyTable
{
    private const int BetweenChecks = 1 << 12;

    private readonly int budget;
    private readonly CancellationToken cancellation;
    private Node[] nodes = new Node[1 << 10];
    private int[] buckets = new int[1 << 10];
    private int count = 2;

    /// <param name="budget">Most nodes before <see cref="DiagramLimitException"/>.</param>
    /// <param name="cancellation">Looked at while nodes are made.</param>
    public FamilyTable(int budget = int.MaxValue, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(budget);
        this.budget = budget;
        this.cancellation = cancellation;
        nodes[0].Level = nodes[1].Level = int.MaxValue;
    }

    /// <summary>Nodes made so far, the two terminals included.</summary>
    public int NodesMade => count;

    /// <summary>The level that is decided first; <see cref="int.MaxValue"/> for none and nothing.</summary>
    public int Level(Family f) => nodes[f.Node].Level;

    /// <summary>The sets that do not hold the first level.</summary>
    public Family Low(Family f) => new(nodes[f.Node].Low);

    /// <summary>The sets that hold the first level, each without it.</summary>
    public Family High(Family f) => new(nodes[f.Node].High);

    /// <summary>The family of one set.</summary>
    public Family Of(IEnumerable<int> levels) =>
        levels.OrderDescending().Aggregate(Family.Nothing, (f, level) => Make(level, Family.None, f));

    /// <summary>The sets of <paramref name="low"/>, and those of <paramref name="high"/> with the level added.</summary>
    /// <param name="level">Lower than any in either.</param>
    /// <param name="low">May be none.</param>
    /// <param name="high">May be none.</param>
    public Family Make(int level, Family low, Family high)
    {
        if (high.IsNone)
            return low;
        for (var i = buckets[Bucket(level, low.Node, high.Node)]; i != 0; i = nodes[i].Next)
        {
            ref readonly var node = ref nodes[i];
            if (node.Low == low.Node && node.High == high.Node && node.Level == level)
                return new(i);
        }
        return new(Add(level, low.Node, high.Node));
    }

    /// <summary>How many sets there are.</summary>
    public BigInteger Count(Family family)
    {
        var counts = new Dictionary<Family, BigInteger> { [Family.None] = 0, [Family.Nothing] = 1 };
        return CountOf(family);

        BigInteger CountOf(Family f)
        {
            if (!counts.TryGetValue(f, out var total))
            {
                total = CountOf(Low(f)) + CountOf(High(f));
                counts.Add(f, total);
            }
            return total;
        }
    }

    /// <summary>The levels that some set holds, rising.</summary>
    public IReadOnlyList<int> Support(Family family) =>
        [.. Reachable(family).Select(Level).Distinct().Order()];

    /// <summary>Nodes of the family's diagram, the terminals not counted.</summary>
    public int NodeCount(Family family) => Reachable(family).Count;

    private HashSet<Family> Reachable(Family family)
    {
        var seen = new HashSet<Family>();
        var open = new Stack<Family>([family]);
        while (open.TryPop(out var f))
        {
            if (f.IsConstant || !seen.Add(f))
                continue;
            open.Push(Low(f));
            open.Push(High(f));
        }
        return seen;
    }

    private int Add(int level, int low, int high)
    {
        if (count >= budget)
            throw new DiagramLimitException();
        if (count % BetweenChecks == 0)
            cancellation.ThrowIfCancellationRequested();
        if (count == nodes.Length)
            Grow();
        nodes[count].Level = level;
        nodes[count].Low = low;
        nodes[count].High = high;
        Hang(count);
        return count++;
    }

    private void Grow()
    {
        Array.Resize(ref nodes, nodes.Length * 2);
        buckets = new int[nodes.Length];
        for (var i = 2; i < count; i++)
            Hang(i);
    }

    private void Hang(int index)
    {
        ref var node = ref nodes[index];
        ref var bucket = ref buckets[Bucket(node.Level, node.Low, node.High)];
        node.Next = bucket;
        bucket = index;
    }

    private int Bucket(int level, int low, int high)
    {
        var mixed = (uint)level * 0x9E3779B1u + (uint)low * 0x85EBCA77u + (uint)high * 0xC2B2AE3Du;
        return (int)(mixed ^ mixed >> 15) & (buckets.Length - 1);
    }

    private struct Node
    {
        public int Level;
        public int Low;
        public int High;

        /// <summary>The next node in the same bucket; 0 ends the chain.</summary>
        public int Next;
    }
}
