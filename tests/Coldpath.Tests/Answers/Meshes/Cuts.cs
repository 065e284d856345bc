using System.Numerics;

namespace Coldpath.Tests.Answers.Meshes;

/// <summary>
/// The minimal cuts between two bars of a mesh by other means than the engine's: a cut is minimal exactly when the bars on
/// either side hang together, so the cuts are the ways to divide the bars into two such sides.
/// </summary>
internal static class Cuts
{
    /// <summary>Every minimal cut by trying all divisions: the numbers of its switches from 1, rising.</summary>
    public static IEnumerable<int[]> ByBruteForce(MeshNetwork mesh)
    {
        for (var side = 0; side < 1 << mesh.Bars; side++)
            if (
                (side >> mesh.Fed & 1) == 1
                && (side >> mesh.Load & 1) == 0
                && HangsTogether(mesh, side)
                && HangsTogether(mesh, ((1 << mesh.Bars) - 1) ^ side)
            )
                yield return
                [
                    .. mesh
                        .Switches.Index()
                        .Where(s => (side >> s.Item.A & 1) != (side >> s.Item.B & 1))
                        .Select(s => s.Index + 1),
                ];
    }

    private static bool HangsTogether(MeshNetwork mesh, int bars)
    {
        var (reached, before) = (bars & -bars, 0);
        while (reached != before)
        {
            before = reached;
            foreach (var (a, b) in mesh.Switches)
                if ((bars >> a & bars >> b & 1) == 1 && ((reached >> a | reached >> b) & 1) == 1)
                    reached |= 1 << a | 1 << b;
        }
        return reached == bars;
    }

    /// <summary>
    /// How many minimal cuts part opposite corners of a square grid: bar by bar, row after row, counting the ways in which
    /// the last row's bars lie on the two sides and hang together so far.
    /// </summary>
    public static BigInteger OfGrid(int side)
    {
        var counts = new Dictionary<string, BigInteger> { [Row.Empty(side).Key] = 1 };
        for (var bar = 0; bar < side * side; bar++)
        {
            var next = new Dictionary<string, BigInteger>();
            foreach (var (key, count) in counts)
            foreach (
                var fed in (bool[])(
                    bar == 0 ? [true]
                    : bar == side * side - 1 ? [false]
                    : [true, false]
                )
            )
                if (Row.Parse(key).With(bar % side, fed) is { } row)
                    next[row.Key] = next.GetValueOrDefault(row.Key) + count;
            counts = next;
        }
        return counts
            .Where(p => Row.Parse(p.Key).IsWhole)
            .Aggregate(BigInteger.Zero, (sum, p) => sum + p.Value);
    }

    /// <summary>
    /// The last bar of each column: which part of a side it belongs to, a positive number for the fed side, a negative one
    /// for the other, 0 above the grid; and which sides have a part that no bar here belongs to.
    /// </summary>
    private sealed record Row(int[] Parts, bool FedClosed, bool DeadClosed)
    {
        public string Key => string.Join(',', Parts) + (FedClosed ? "F" : "") + (DeadClosed ? "D" : "");

        public static Row Empty(int side) => new(new int[side], false, false);

        public static Row Parse(string key) =>
            new(
                [.. key.TrimEnd('F', 'D').Split(',').Select(int.Parse)],
                key.Contains('F', StringComparison.Ordinal),
                key.Contains('D', StringComparison.Ordinal)
            );

        /// <summary>Each side is one part.</summary>
        public bool IsWhole =>
            Parts.Where(p => p > 0).Distinct().Count() + (FedClosed ? 1 : 0) == 1
            && Parts.Where(p => p < 0).Distinct().Count() + (DeadClosed ? 1 : 0) == 1;

        /// <summary>With the next bar of the column; null when a side could no longer hang together.</summary>
        public Row? With(int column, bool fed)
        {
            if (fed ? FedClosed : DeadClosed)
                return null;
            var parts = Parts.ToArray();
            var above = parts[column];
            parts[column] = fed ? int.MaxValue : int.MinValue;
            if (column > 0)
                Join(parts, parts[column - 1], parts[column]);
            Join(parts, above, parts[column]);
            if (above == 0 || Math.Sign(above) == Math.Sign(parts[column]) || parts.Contains(above))
                return Renumbered(parts, FedClosed, DeadClosed);
            return parts.Any(p => Math.Sign(p) == Math.Sign(above))
                ? null
                : Renumbered(parts, FedClosed || above > 0, DeadClosed || above < 0);
        }

        private static void Join(int[] parts, int one, int other)
        {
            if (Math.Sign(one) != Math.Sign(other))
                return;
            for (var i = 0; i < parts.Length; i++)
                if (parts[i] == one)
                    parts[i] = other;
        }

        private static Row Renumbered(int[] parts, bool fedClosed, bool deadClosed)
        {
            var names = new Dictionary<int, int> { [0] = 0 };
            foreach (var part in parts)
                names.TryAdd(part, Math.Sign(part) * names.Count);
            return new([.. parts.Select(p => names[p])], fedClosed, deadClosed);
        }
    }
}
