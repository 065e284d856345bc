using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The power side as a drawing sees it: blocks in rows and lanes, and which of their ports are wired together.</summary>
/// <param name="Rows">Of each block, by its index.</param>
/// <param name="Joints">Ports wired together.</param>
/// <param name="InRungs">Nets that go on in the ladder.</param>
internal sealed record PowerCircuit(
    Panel Panel,
    IReadOnlyList<Block> Blocks,
    IReadOnlyList<IReadOnlyList<Port>> Joints,
    int[] Rows,
    Lanes Lanes,
    RungNets InRungs
)
{
    /// <summary>Rows in use.</summary>
    public int RowCount => Rows.Length == 0 ? 0 : Rows.Max() + 1;

    public static PowerCircuit Of(Panel panel, Division division, bool oneLine, Shown shown)
    {
        var blocks = new Blocks(division, oneLine, shown).All();
        var joints = Power.Joints.Of(panel, division, blocks);
        var rows = Power.Rows.Of(blocks, joints);
        return new(
            panel,
            blocks,
            joints,
            rows,
            Lanes.Of(division.Power, blocks, joints, rows),
            new(division.Rungs)
        );
    }

    /// <summary>The lane that a block stands in.</summary>
    public int LaneOf(int block) => laneOf[block];

    private readonly int[] laneOf = LanesByBlock(Lanes, Blocks.Count);

    private static int[] LanesByBlock(Lanes lanes, int blocks)
    {
        var found = new int[blocks];
        for (var lane = 0; lane < lanes.Members.Count; lane++)
            foreach (var block in lanes.Members[lane])
                found[block] = lane;
        return found;
    }

    /// <summary>The lanes in the order in which wires cross least.</summary>
    public Board Arranged()
    {
        var risers = Risers.Of(Blocks, Joints, Rows, Lanes);
        return LaneOrder.Best(RoutePlan.Of(risers), Lanes, RowCount + 1);
    }
}
