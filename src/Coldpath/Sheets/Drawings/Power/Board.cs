namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A route plan with its lanes in an order: every trunk has a track, and the crossings can be counted.</summary>
internal sealed class Board
{
    public Board(RoutePlan plan, IReadOnlyList<int> order, int channels)
    {
        Plan = plan;
        Order = order;
        Across = new Across(plan, order);
        TracksIn = new int[channels];
        foreach (var channel in plan.Trunks.GroupBy(t => t.Channel))
            Stack([.. channel], channel.Key);
        Crossings = Count();
    }

    public RoutePlan Plan { get; }

    /// <summary>Lanes from left to right.</summary>
    public IReadOnlyList<int> Order { get; }
    public Across Across { get; }

    /// <summary>How many tracks each channel needs.</summary>
    public int[] TracksIn { get; }

    /// <summary>Of each trunk, from the top of its channel.</summary>
    public Dictionary<Trunk, int> TrackOf { get; } = [];

    /// <summary>How often wires of different joints cross.</summary>
    public int Crossings { get; }

    /// <summary>How far level wires reach, in columns.</summary>
    public int Length =>
        Plan.Trunks.Sum(t =>
        {
            var columns = t.Risers.Select(r => Across.ColumnOf(r.Lane)).ToList();
            return columns.Max() - columns.Min();
        });

    private void Stack(IReadOnlyList<Trunk> trunks, int channel)
    {
        var (tracks, count) = ChannelOrder.Of(Bar.Of(trunks, Plan, Across), Above.Of(trunks));
        for (var i = 0; i < trunks.Count; i++)
            TrackOf[trunks[i]] = tracks[i];
        TracksIn[channel] = count;
    }

    private int Count()
    {
        var uprights = Upright.Of(Plan, Across, TrackOf).OrderBy(u => u.X).ToList();
        var bars = Bar.Of(Plan.Trunks, Plan, Across);
        var sum = 0;
        for (var i = 0; i < bars.Count; i++)
        {
            var depth = Upright.Depth(Plan.Trunks[i].Channel, TrackOf[Plan.Trunks[i]]);
            sum += uprights.Count(u =>
                u.Joint != bars[i].Joint && bars[i].Spans(u.X) && u.From < depth && depth < u.To
            );
        }
        return sum;
    }
}
