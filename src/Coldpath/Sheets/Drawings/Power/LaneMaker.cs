using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Follows the chains: what comes first after a block stays in its lane, what branches off begins one.</summary>
internal sealed class LaneMaker
{
    private readonly Dictionary<string, int> blockOf;
    private readonly int[] rows;
    private readonly int[] laneOf;
    private readonly List<List<int>> lanes = [];
    private readonly List<(int Left, int Right)> ordered = [];

    public LaneMaker(IReadOnlyList<Block> blocks, int[] rows)
    {
        this.rows = rows;
        blockOf = blocks.ToDictionary(b => b.Tag, b => b.Index, StringComparer.Ordinal);
        laneOf = [.. blocks.Select(_ => -1)];
    }

    public IReadOnlyList<IReadOnlyList<int>> Members => lanes;
    public IReadOnlyList<(int Left, int Right)> Ordered => ordered;

    public void Follow(Chain chain)
    {
        var known = lanes.Count;
        var start = FirstLane(chain);
        var end = Walk(chain.Root, null);
        // A chain that leaves a lane and comes to one again is another way: it stands on the right of where it leaves.
        if (start >= 0 && end is { } last && lanes.Count > known && laneOf[last] < known)
            ordered.Add((start, known));
    }

    /// <summary>Blocks that no chain names, below what feeds them.</summary>
    public void TakeRest(IReadOnlyList<IReadOnlyList<Port>> joints)
    {
        var left = Enumerable
            .Range(0, laneOf.Length)
            .Where(b => laneOf[b] < 0)
            .OrderBy(b => rows[b])
            .ToList();
        var feeders = new Dictionary<int, List<int>>();
        foreach (var joint in joints)
        foreach (var port in joint.Where(p => p.Above && laneOf[p.Block] < 0))
            (feeders.TryGetValue(port.Block, out var list) ? list : feeders[port.Block] = []).AddRange(
                joint.Where(p => !p.Above).Select(p => p.Block)
            );
        foreach (var block in left)
            Take(block, feeders.GetValueOrDefault(block, []).Cast<int?>().FirstOrDefault());
    }

    private int FirstLane(Chain chain) =>
        chain.Passages.FirstOrDefault() is { } first && blockOf.TryGetValue(first.Device, out var block)
            ? laneOf[block]
            : -1;

    /// <param name="above">What the piece follows; null at a beginning.</param>
    /// <returns>What the next piece follows.</returns>
    private int? Walk(ChainPiece piece, int? above)
    {
        switch (piece)
        {
            case Passage passage when blockOf.TryGetValue(passage.Device, out var block):
                Take(block, passage.Left.Count > 0 ? above : null);
                return block;
            case InSeries series:
                foreach (var next in series.Pieces)
                    above = Walk(next, above);
                return above;
            case InParallel parallel:
                return WalkBranches(parallel, above);
            default:
                return above;
        }
    }

    private int? WalkBranches(InParallel parallel, int? above)
    {
        var exit = default(int?);
        var before = -1;
        foreach (var branch in parallel.Branches)
        {
            var known = lanes.Count;
            var end = Walk(branch, above);
            var lane = lanes.Count > known ? known : FirstLaneIn(branch);
            if (before >= 0 && lane >= 0 && lane != before)
                ordered.Add((before, lane));
            before = lane;
            exit ??= end;
        }
        return exit;
    }

    private int FirstLaneIn(ChainPiece branch) =>
        Chain
            .PassagesIn(branch)
            .Select(p => blockOf.GetValueOrDefault(p.Device, -1))
            .FirstOrDefault(b => b >= 0, -1)
            is var block
                and >= 0
            ? laneOf[block]
            : -1;

    private void Take(int block, int? above)
    {
        if (laneOf[block] >= 0)
            return;
        if (
            above is { } feeder
            && lanes[laneOf[feeder]] is var lane
            && lane[^1] == feeder
            && rows[feeder] < rows[block]
        )
        {
            lane.Add(block);
            laneOf[block] = laneOf[feeder];
            return;
        }
        laneOf[block] = lanes.Count;
        lanes.Add([block]);
    }
}
