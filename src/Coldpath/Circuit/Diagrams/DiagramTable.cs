using System.Diagnostics.Metrics;

namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// Reduced ordered binary decision diagrams with complement edges. Levels are numbered from 0 at the root; a lower
/// level is tested first. Nodes are never freed: a panel's check ends before that would pay.
/// </summary>
/// <remarks>Not thread safe: one table serves one search.</remarks>
public sealed partial class DiagramTable
{
    private const int True = 0;
    private const int False = 1;

    /// <summary>Edges stay below 2^27, so that a cache entry's third word has room for the operation.</summary>
    private const int MostNodes = 1 << 26;
    private const int BetweenChecks = 1 << 12;

    /// <summary>Nodes made by all tables of the process, for whoever measures; counted in steps of 4,096 a table.</summary>
    private static readonly Counter<long> Made = new Meter("Coldpath").CreateCounter<long>("diagram.nodes");

    private readonly int budget;
    private readonly CancellationToken cancellation;
    private Node[] nodes;
    private int[] buckets;
    private int count = 1;
    private int nextCheck = BetweenChecks;

    /// <param name="budget">Most nodes before <see cref="DiagramLimitException"/>.</param>
    /// <param name="capacity">Nodes to make room for at first.</param>
    /// <param name="cancellation">Looked at while nodes are made.</param>
    public DiagramTable(
        int budget = MostNodes,
        int capacity = 1 << 14,
        CancellationToken cancellation = default
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(budget);
        this.budget = Math.Min(budget, MostNodes);
        this.cancellation = cancellation;
        var size = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(capacity, 256));
        nodes = new Node[size];
        buckets = new int[size];
        cache = NewCache(size);
        nodes[0].Level = int.MaxValue;
    }

    /// <summary>Nodes made so far, the terminal included.</summary>
    public int NodesMade => count;

    /// <summary>The function that is true when the variable at the level is.</summary>
    public Diagram Variable(int level)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(level);
        return new(Make(level, False, True));
    }

    /// <summary>The variable at the level, or its negation.</summary>
    public Diagram Literal(int level, bool value) => value ? Variable(level) : !Variable(level);

    /// <summary>The level tested first; <see cref="int.MaxValue"/> for a constant.</summary>
    public int Level(Diagram f) => nodes[f.Edge >> 1].Level;

    /// <summary>The function with its first tested variable false.</summary>
    public Diagram Low(Diagram f) => new(LowOf(f.Edge));

    /// <summary>The function with its first tested variable true.</summary>
    public Diagram High(Diagram f) => new(HighOf(f.Edge));

    private int LevelOf(int f) => nodes[f >> 1].Level;

    private int LowOf(int f) => nodes[f >> 1].Low ^ (f & 1);

    private int HighOf(int f) => nodes[f >> 1].High ^ (f & 1);

    /// <summary>The one node that tests the level; canonical because a high edge is never complemented.</summary>
    private int Make(int level, int low, int high)
    {
        if (low == high)
            return low;
        var complement = high & 1;
        low ^= complement;
        high ^= complement;
        var bucket = Hash(level, low, high) & (buckets.Length - 1);
        for (var i = buckets[bucket]; i != 0; i = nodes[i].Next)
        {
            ref readonly var node = ref nodes[i];
            if (node.Low == low && node.High == high && node.Level == level)
                return i << 1 | complement;
        }
        return Add(level, low, high, bucket) << 1 | complement;
    }

    private int Add(int level, int low, int high, int bucket)
    {
        if (count >= budget)
            throw new DiagramLimitException();
        if (count >= nextCheck)
        {
            cancellation.ThrowIfCancellationRequested();
            nextCheck = count + BetweenChecks;
            Made.Add(BetweenChecks);
        }
        if (count == nodes.Length)
        {
            Grow();
            bucket = Hash(level, low, high) & (buckets.Length - 1);
        }
        nodes[count] = new Node
        {
            Level = level,
            Low = low,
            High = high,
            Next = buckets[bucket],
        };
        buckets[bucket] = count;
        return count++;
    }

    private void Grow()
    {
        Array.Resize(ref nodes, nodes.Length * 2);
        buckets = new int[nodes.Length];
        for (var i = 1; i < count; i++)
        {
            ref var node = ref nodes[i];
            var bucket = Hash(node.Level, node.Low, node.High) & (buckets.Length - 1);
            node.Next = buckets[bucket];
            buckets[bucket] = i;
        }
        GrowCache(nodes.Length);
    }

    private static int Hash(int a, int b, int c)
    {
        var mixed = (uint)a * 0x9E3779B1u + (uint)b * 0x85EBCA77u + (uint)c * 0xC2B2AE3Du;
        return (int)(mixed ^ mixed >> 15);
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
