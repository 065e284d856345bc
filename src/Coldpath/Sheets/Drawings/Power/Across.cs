namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Where things stand across, as numbers that only tell left from right: lanes in their order, and between them gaps
/// for the links.
/// </summary>
internal sealed class Across
{
    private const int Wide = 1 << 16;
    private readonly int[] columnOf;

    /// <param name="order">Lanes from left to right.</param>
    public Across(RoutePlan plan, IReadOnlyList<int> order)
    {
        columnOf = new int[order.Count];
        for (var i = 0; i < order.Count; i++)
            columnOf[order[i]] = i;
        GapOf = [.. plan.Links.Select(GapFor)];
        TrackOf = new int[GapOf.Length];
        TracksIn = new int[order.Count + 1];
        foreach (var gap in Enumerable.Range(0, GapOf.Length).GroupBy(i => GapOf[i]))
            TracksIn[gap.Key] = Stack(plan, gap);
    }

    /// <summary>The gap of each link: gap g lies left of column g.</summary>
    public int[] GapOf { get; }

    /// <summary>The place of each link in its gap, from the left.</summary>
    public int[] TrackOf { get; }

    /// <summary>How many places each gap needs.</summary>
    public int[] TracksIn { get; }

    public int ColumnOf(int lane) => columnOf[lane];

    public int Of(Riser riser) => (columnOf[riser.Lane] * 2 + 1) * Wide + riser.Slot;

    public int OfLink(int link) => GapOf[link] * 2 * Wide + TrackOf[link];

    /// <summary>The gap nearest to both trunks, the right one of two.</summary>
    private int GapFor(Link link)
    {
        var (upper, lower) = (Reach(link.Upper), Reach(link.Lower));
        return Enumerable.Range(0, columnOf.Length + 1).MinBy(g => (Beside(g, upper) + Beside(g, lower), -g));
    }

    private (int From, int To) Reach(Trunk trunk)
    {
        var columns = trunk.Risers.Select(r => columnOf[r.Lane]);
        return (columns.Min(), columns.Max());
    }

    private static int Beside(int gap, (int From, int To) reach) =>
        gap <= reach.From ? reach.From - gap
        : gap > reach.To ? gap - reach.To - 1
        : 0;

    /// <summary>Links that pass the same channel stand side by side.</summary>
    private int Stack(RoutePlan plan, IEnumerable<int> links)
    {
        var ends = new List<int>();
        foreach (var link in links.OrderBy(l => plan.Links[l].Upper.Channel).ThenBy(l => l))
        {
            var (from, to) = (plan.Links[link].Upper.Channel, plan.Links[link].Lower.Channel);
            var free = ends.FindIndex(e => e < from);
            if (free < 0)
            {
                free = ends.Count;
                ends.Add(to);
            }
            ends[free] = to;
            TrackOf[link] = free;
        }
        return ends.Count;
    }
}
