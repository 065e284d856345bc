namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Which level pieces join which risers in which channel. It does not depend on the order of the lanes. Always
/// succeeds: what one channel cannot join takes several, linked between the lanes.
/// </summary>
internal sealed record RoutePlan(
    IReadOnlyList<Riser> Risers,
    IReadOnlyList<Trunk> Trunks,
    IReadOnlyList<Link> Links
)
{
    public static RoutePlan Of(IReadOnlyList<IReadOnlyList<Riser>> risers)
    {
        var trunks = new List<Trunk>();
        var links = new List<Link>();
        foreach (var joint in risers.Where(r => r.Count > 1))
        {
            var own = TrunksOf(joint);
            trunks.AddRange(own);
            links.AddRange(own.Zip(own.Skip(1), (a, b) => new Link(a, b)));
        }
        return Unknotted.Of(new([.. risers.SelectMany(r => r)], trunks, links));
    }

    private static List<Trunk> TrunksOf(IReadOnlyList<Riser> joint)
    {
        var trunks = new List<Trunk>();
        var left = joint.ToList();
        // Wires that part do so next to their one beginning, wires that meet next to their one end.
        var late = joint.SelectMany(r => r.Ports).Count(p => p.Above) == 1;
        while (left.Count > 0)
        {
            var channels = left.SelectMany(r => new[] { r.From, r.To }).Distinct().Order().ToList();
            if (late)
                channels.Reverse();
            var best = channels.MaxBy(c => left.Count(r => r.From <= c && c <= r.To));
            var met = left.Where(r => r.From <= best && best <= r.To).ToList();
            trunks.Add(new(joint[0].Joint, best, met));
            left.RemoveAll(met.Contains);
        }
        return [.. trunks.OrderBy(t => t.Channel)];
    }
}
