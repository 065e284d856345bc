namespace Coldpath.Circuit.Diagrams;

/// <summary>The computed table: direct-mapped, a clash overwrites.</summary>
public sealed partial class DiagramTable
{
    private const int LargestCache = 1 << 22;

    private Entry[] cache;

    private static Entry[] NewCache(int size) => new Entry[Math.Min(size, LargestCache)];

    private void GrowCache(int size)
    {
        if (cache.Length >= LargestCache)
            return;
        var old = cache;
        cache = NewCache(size);
        foreach (var entry in old)
            if (entry.First != 0)
                cache[Slot(entry.First, entry.Second, entry.Third)] = entry;
    }

    private int Slot(int first, int second, int third) => Hash(first, second, third) & (cache.Length - 1);

    private bool Known(int first, int second, int third, out int result)
    {
        ref readonly var entry = ref cache[Slot(first, second, third)];
        result = entry.Result;
        return entry.First == first && entry.Second == second && entry.Third == third;
    }

    private int Remember(int first, int second, int third, int result)
    {
        ref var entry = ref cache[Slot(first, second, third)];
        entry.First = first;
        entry.Second = second;
        entry.Third = third;
        entry.Result = result;
        return result;
    }

    private struct Entry
    {
        /// <summary>Never a constant: 0 where nothing is remembered.</summary>
        public int First;
        public int Second;

        /// <summary>The third operand, and the operation from bit 27 on.</summary>
        public int Third;
        public int Result;
    }

    private static class Operation
    {
        public const int And = 0 << 27;
        public const int Xor = 1 << 27;
        public const int IfThenElse = 2 << 27;
        public const int Exists = 3 << 27;
        public const int AndExists = 4 << 27;
        public const int Restrict = 5 << 27;
        public const int Upward = 6 << 27;
        public const int Image = 7 << 27;
        public const int Preimage = 8 << 27;
        public const int Downward = 9 << 27;
    }
}
