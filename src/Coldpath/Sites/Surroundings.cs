using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// A netlist of a part of a site together with what the rest of the site may do to it. Supplies that the site feeds stay
/// in the netlist: they may come and go at any time, which is all that can happen to them from outside.
/// </summary>
/// <param name="netlist">Of the part.</param>
/// <param name="fed">Supplies of it that the site feeds.</param>
/// <param name="homeOf">For a source that lies in the netlist itself the net of a conductor of it, by the conductor's own.</param>
internal sealed class Surroundings(
    Netlist netlist,
    IReadOnlyList<FedSupply> fed,
    Func<Source, Func<string, string>?> homeOf
)
{
    private readonly HashSet<string> earthed = Spread.Earthed(netlist);
    private readonly HashSet<string> fedJoints = [.. fed.SelectMany(f => f.Joints.Values)];

    /// <param name="neighbours">What each of the other sides is called, and what it may do.</param>
    /// <param name="netOf">The netlist's net at a joint.</param>
    public Netlist With(
        IReadOnlyList<(string Label, Outline Outline)> neighbours,
        Func<string, string> netOf
    ) => Stub(neighbours, netOf).AddTo(netlist);

    /// <summary>What the rest of the site may do, in the netlist's names.</summary>
    public Stub Stub(IReadOnlyList<(string Label, Outline Outline)> neighbours, Func<string, string> netOf)
    {
        var stub = new Stub(netlist.Earth, netOf);
        foreach (var (label, outline) in neighbours)
            AddLinks(stub, label, outline, netOf);
        var all = Outline.Together(neighbours.Select(n => n.Outline));
        var strays = all.Feeds.Where(f => IsStray(f, all)).ToLookup(f => homeOf(f.Source) is not null);
        var foreign = Arrivals.Deciding(strays[false]).ToArray();
        foreach (var feeds in Arrivals.Returning(strays[true], foreign).GroupBy(f => f.Source))
            stub.Return(feeds, homeOf(feeds.Key)!);
        foreach (var feeds in foreign.GroupBy(f => f.Source))
            stub.Feed(feeds.Key, GroupOf(feeds.Key, all), [.. feeds]);
        foreach (var (label, outline) in neighbours)
        foreach (var feeds in outline.Welded.GroupBy(f => f.Source))
            if (homeOf(feeds.Key) is { } netOfOwn)
                stub.Return(feeds, netOfOwn, weldedIn: label);
            else
                stub.Feed(feeds.Key, GroupOf(feeds.Key, all), [.. feeds], weldedIn: label);
        return stub;
    }

    private void AddLinks(Stub stub, string label, Outline outline, Func<string, string> netOf)
    {
        foreach (var supply in fed)
        foreach (var group in Grouped(outline.Ties.Where(t => IsOf(supply, t) && !IsEarthed(t, netOf))))
            stub.Load(label, group, power: false);
        var ties = Graded(
            outline.Ties.Where(t => !fedJoints.Contains(t.A) && !fedJoints.Contains(t.B)),
            netOf
        );
        foreach (var sort in ties.GroupBy(t => t.Grade).OrderBy(g => g.Key))
            if (sort.Key < Grade.Loose)
                stub.Contacts(label, Grouped(sort), sort.Key);
            else
                foreach (var group in Grouped(sort.Where(t => IsPower(outline, t) || !IsEarthed(t, netOf))))
                    stub.Load(label, group, group.All(outline.Power.Contains));
    }

    /// <summary>A load between a conductor and the earthed one makes nothing live.</summary>
    private bool IsEarthed(Tie tie, Func<string, string> netOf) =>
        earthed.Contains(netOf(tie.A)) || earthed.Contains(netOf(tie.B));

    private static bool IsPower(Outline outline, Tie tie) =>
        outline.Power.Contains(tie.A) && outline.Power.Contains(tie.B);

    private static bool IsOf(FedSupply supply, Tie tie) =>
        supply.Joints.Values.Contains(tie.A) && supply.Joints.Values.Contains(tie.B);

    /// <summary>It arrives elsewhere than at a supply that it feeds.</summary>
    private bool IsStray(Feed feed, Outline outline) =>
        !fed.Any(f => f.Joints.Values.Contains(feed.Joint) && f.IsFedBy(feed.Source, outline));

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
                ? t with
                {
                    Grade = Grade.Loose,
                }
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
            from net in spread.Reach(conductor.Net, Grade.Solid, supply.Name).At(Grade.Solid)
            select (Net: net, By: $"{supply.Name} {conductor.Name}");
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
