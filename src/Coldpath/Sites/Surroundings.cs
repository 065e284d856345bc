using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// A netlist of a part of a site together with what the rest of the site may do to it. Supplies that the site feeds stay
/// in the netlist: they may come and go at any time, which is all that can happen to them from outside.
/// </summary>
internal sealed class Surroundings(Netlist netlist, IReadOnlyList<FedSupply> fed)
{
    private readonly HashSet<string> fedJoints = [.. fed.SelectMany(f => f.Joints.Values)];

    /// <param name="label">What the other side is called.</param>
    /// <param name="outline">What it may do.</param>
    /// <param name="netOf">The netlist's net at a joint.</param>
    public Netlist With(string label, Outline outline, Func<string, string> netOf)
    {
        var stub = new Stub(label, netlist.Earth, netOf);
        foreach (var supply in fed)
            foreach (var group in Grouped(outline.Ties.Where(t => IsOf(supply, t))))
                stub.Link(group, Grade.Loose);
        var ties = Graded(outline.Ties.Where(t => !fedJoints.Contains(t.A) && !fedJoints.Contains(t.B)), netOf);
        foreach (var sort in ties.GroupBy(t => t.Grade).OrderBy(g => g.Key))
            foreach (var group in Grouped(sort))
                stub.Link(group, sort.Key);
        foreach (var source in outline.Feeds.GroupBy(f => f.Source))
            if (Strays(source.Key, [.. source], outline) is { Length: > 0 } strays)
                stub.Feed(source.Key, GroupOf(source.Key, outline), strays);
        return stub.AddTo(netlist);
    }

    private static bool IsOf(FedSupply supply, Tie tie) =>
        supply.Joints.Values.Contains(tie.A) && supply.Joints.Values.Contains(tie.B);

    /// <summary>What arrives elsewhere than at a supply that it feeds.</summary>
    private Feed[] Strays(Source source, Feed[] feeds, Outline outline) =>
        fed.Any(f => f.IsFedBy(source, outline))
            ? [.. feeds.Where(f => !fedJoints.Contains(f.Joint))]
            : feeds;

    private string GroupOf(Source source, Outline outline) =>
        fed.FirstOrDefault(f => f.IsFedBy(source, outline) && f.Fits(source, outline))?.Supply.Group
        ?? source.Name;

    /// <summary>
    /// Nets that this side feeds with different conductors are linked through loads: whatever else joins them, as the
    /// two contactors of a reversing starter might, is a short where it stands, and is looked for there.
    /// </summary>
    private IEnumerable<Tie> Graded(IEnumerable<Tie> ties, Func<string, string> netOf)
    {
        var fedBy = new Lazy<ILookup<string, string>>(FedBy);
        return ties.Select(t =>
            t.Grade < Grade.Loose && AreApart(fedBy.Value[netOf(t.A)], fedBy.Value[netOf(t.B)])
                ? t with { Grade = Grade.Loose }
                : t
        );
    }

    private static bool AreApart(IEnumerable<string> a, IEnumerable<string> b) =>
        a.Any() && b.Any() && !a.Intersect(b).Any();

    private ILookup<string, string> FedBy()
    {
        var spread = new Spread(netlist);
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));
        var reached =
            from supply in supplies
            from conductor in supply.Conductors
            from net in spread.Reach(conductor.Net, Grade.Solid, supply.Name)
            where net.Value == Grade.Solid
            select (Net: net.Key, By: $"{supply.Name} {conductor.Name}");
        return reached.ToLookup(r => r.Net, r => r.By, StringComparer.Ordinal);
    }

    /// <summary>Joints that hang together, in groups of two or more.</summary>
    private static IEnumerable<IReadOnlyList<string>> Grouped(IEnumerable<Tie> ties)
    {
        var groups = new List<List<string>>();
        foreach (var tie in ties)
        {
            var touched = groups.Where(g => g.Contains(tie.A) || g.Contains(tie.B)).ToArray();
            List<string> merged = [.. touched.SelectMany(g => g).Append(tie.A).Append(tie.B).Distinct()];
            groups.RemoveAll(touched.Contains);
            groups.Add(merged);
        }
        return groups;
    }
}
