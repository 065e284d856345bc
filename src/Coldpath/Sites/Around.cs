namespace Coldpath.Sites;

/// <summary>What the rest of a site may do to some parts of it, as these have to tell it apart.</summary>
internal sealed class Around
{
    /// <param name="outside">For each bundle that they share with others who these are, and what they may do.</param>
    /// <param name="kept">Tells sources apart.</param>
    /// <param name="isOwn">A source of those parts.</param>
    /// <param name="welded">The same when contacts elsewhere may weld; null to leave that out.</param>
    public Around(
        IReadOnlyList<(Bundle Bundle, string Label, Outline Into)> outside,
        Arrivals kept,
        Func<Source, bool> isOwn,
        Around? welded
    )
    {
        (var feeds, StandFor) = kept.Apart([.. outside.SelectMany(b => b.Into.Feeds)], isOwn);
        var at = feeds.ToLookup(f => f.Joint, StringComparer.Ordinal);
        var more = Arrivals
            .OnlyWelded(welded?.Feeds ?? [], feeds, isOwn)
            .ToLookup(f => f.Joint, StringComparer.Ordinal);
        Neighbours =
        [
            .. outside.Select(b =>
                (b.Label, b.Into with { Feeds = At(b.Bundle, at), Welded = At(b.Bundle, more) })
            ),
        ];
    }

    private static IReadOnlyList<Feed> At(Bundle bundle, ILookup<string, Feed> feeds) =>
        [.. bundle.Joints.SelectMany(j => feeds[j])];

    /// <summary>What each neighbour is called, and what it may do, each feed from one source.</summary>
    public IReadOnlyList<(string Label, Outline Into)> Neighbours { get; }

    public IEnumerable<Feed> Feeds => Neighbours.SelectMany(n => n.Into.Feeds);

    /// <summary>Sources that nothing tells apart, where there are more than two: the first two stand for the others.</summary>
    public IReadOnlyList<IReadOnlyList<Source>> StandFor { get; }
}
