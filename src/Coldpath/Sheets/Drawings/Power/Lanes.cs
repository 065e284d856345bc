using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Straight lines of blocks below each other, and which of them must stand left of which.</summary>
/// <param name="Members">Blocks of each lane from top to bottom, by block index.</param>
/// <param name="Ordered">Pairs of lanes: branches and ways in declared order.</param>
internal sealed record Lanes(
    IReadOnlyList<IReadOnlyList<int>> Members,
    IReadOnlyList<(int Left, int Right)> Ordered
)
{
    public static Lanes Of(
        IReadOnlyList<Chain> chains,
        IReadOnlyList<Block> blocks,
        IReadOnlyList<IReadOnlyList<Port>> joints,
        int[] rows
    )
    {
        var maker = new LaneMaker(blocks, rows);
        foreach (var chain in chains)
            maker.Follow(chain);
        maker.TakeRest(joints);
        return new(maker.Members, maker.Ordered);
    }

    /// <summary>Whether nothing stands between a pair that does not itself belong to the left one.</summary>
    /// <param name="order">Lanes from left to right.</param>
    public bool AreSideBySide(IReadOnlyList<int> order)
    {
        var at = order.Select((lane, i) => (lane, i)).ToDictionary();
        return Ordered.All(pair =>
        {
            var kin = KinOf(pair.Left);
            return order.Skip(at[pair.Left] + 1).Take(at[pair.Right] - at[pair.Left] - 1).All(kin.Contains);
        });
    }

    /// <summary>The lanes that must stand right of one, directly or through others.</summary>
    private HashSet<int> KinOf(int lane)
    {
        var kin = new HashSet<int>();
        var open = new Queue<int>([lane]);
        while (open.TryDequeue(out var left))
            foreach (var (_, right) in Ordered.Where(p => p.Left == left))
                if (kin.Add(right))
                    open.Enqueue(right);
        return kin;
    }
}
