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
}
