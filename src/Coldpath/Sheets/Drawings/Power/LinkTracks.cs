namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Where dashed links run: in the gap left of each block that they join, and in the channel above one of them.</summary>
internal sealed class LinkTracks
{
    private readonly List<LinkRun> runs = [];

    public LinkTracks(PowerCircuit circuit, Board board, DeviceLinks links)
    {
        InGaps = new int[board.Order.Count + 1];
        InChannels = new int[circuit.RowCount + 1];
        var blockOf = circuit.Blocks.ToDictionary(b => b.Tag, b => b.Index, StringComparer.Ordinal);
        foreach (var (device, linked) in links.Drawn())
        {
            var blocks = linked.Where(blockOf.ContainsKey).Select(t => blockOf[t]).ToList();
            foreach (var (a, b) in blocks.Zip(blocks.Skip(1)))
            {
                var (from, to) = (
                    board.Across.ColumnOf(circuit.LaneOf(a)),
                    board.Across.ColumnOf(circuit.LaneOf(b))
                );
                var channel = circuit.Rows[a];
                var same = from == to;
                runs.Add(
                    new(
                        device,
                        a,
                        b,
                        from,
                        InGaps[from]++,
                        to,
                        same ? InGaps[to] - 1 : InGaps[to]++,
                        channel,
                        same ? -1 : InChannels[channel]++
                    )
                );
            }
        }
    }

    public IReadOnlyList<LinkRun> Runs => runs;

    /// <summary>How many links each gap holds.</summary>
    public int[] InGaps { get; }

    /// <summary>How many links each channel holds.</summary>
    public int[] InChannels { get; }
}

/// <param name="Device">The interlock.</param>
/// <param name="A">Index of one linked block; its gap and track there.</param>
/// <param name="B">Index of the other; its gap and track there.</param>
/// <param name="ChannelTrack">-1 when both stand in one column.</param>
internal sealed record LinkRun(
    Panels.PlacedDevice Device,
    int A,
    int B,
    int GapA,
    int TrackA,
    int GapB,
    int TrackB,
    int Channel,
    int ChannelTrack
);
