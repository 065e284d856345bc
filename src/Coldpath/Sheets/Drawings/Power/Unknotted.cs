namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Where a wire comes down a slot in which another goes on down, its trunk must lie above the other's. Crossed
/// phases can ask that of each other in a ring; then one of the trunks is cut in two.
/// </summary>
internal static class Unknotted
{
    public static RoutePlan Of(RoutePlan plan)
    {
        var trunks = new List<Trunk>();
        var links = plan.Links.ToList();
        foreach (var channel in plan.Trunks.GroupBy(t => t.Channel).OrderBy(g => g.Key))
            trunks.AddRange(InChannel([.. channel], links));
        return plan with { Trunks = trunks, Links = links };
    }

    private static List<Trunk> InChannel(List<Trunk> trunks, List<Link> links)
    {
        while (Above.Ring(trunks) is { } knotted)
        {
            var upper = new Trunk(
                knotted.Joint,
                knotted.Channel,
                [.. knotted.Risers.Where(r => r.ComesDown)]
            );
            var lower = new Trunk(
                knotted.Joint,
                knotted.Channel,
                [.. knotted.Risers.Where(r => !r.ComesDown)]
            );
            for (var i = 0; i < links.Count; i++)
                if (links[i].Upper == knotted)
                    links[i] = links[i] with { Upper = lower };
                else if (links[i].Lower == knotted)
                    links[i] = links[i] with { Lower = upper };
            links.Add(new(upper, lower));
            trunks[trunks.IndexOf(knotted)] = upper;
            trunks.Add(lower);
        }
        return trunks;
    }
}
