namespace Coldpath.Sites;

/// <summary>Which of the feeds that may arrive at shared nets have to be told apart, and which say nothing new.</summary>
/// <param name="homes">One more than there are parts from which a reader leaves sources out.</param>
internal sealed class Arrivals(int homes)
{
    /// <summary>More isolating devices than these, each of which stops a part of what arrives, count as none at all.</summary>
    private const int MostIsolators = 3;

    private readonly AlikePool pool = new();

    /// <summary>
    /// What has to be passed on. Through switches every conductor of every source, once for each device that isolates it.
    /// Through loads it does not matter whose voltage it is: for each isolator the first sources of so many homes do.
    /// </summary>
    /// <param name="feeds">All that may arrive.</param>
    /// <returns>In a total order.</returns>
    public IReadOnlyList<Feed> Kept(IEnumerable<Feed> feeds)
    {
        var (strong, loose) = Parted(feeds);
        return
        [
            .. Strong(strong)
                .Concat(loose.GroupBy(f => f.Joint).SelectMany(at => First(at.SelectMany(Homes), homes)))
                .OrderBy(f => f.Joint, StringComparer.Ordinal)
                .ThenBy(f => f.Source.Name, StringComparer.Ordinal)
                .ThenBy(f => f.Conductor.Name, StringComparer.Ordinal)
                .ThenBy(f => f.Grade)
                .ThenBy(f => f.Through.Isolator?.Tag, StringComparer.Ordinal),
        ];
    }

    /// <summary>
    /// Source by source, as the reader has to tell them apart: its own ones, and of others that are alike the first two. With
    /// two every meeting of two can be had, and three that are alike do nothing that two of them do not.
    /// </summary>
    /// <param name="feeds">Kept ones, from all sides.</param>
    /// <param name="isOwn">The source is the reader's.</param>
    /// <returns>The feeds, and after the two that were taken the sources that they stand for.</returns>
    public (IReadOnlyList<Feed> Feeds, IReadOnlyList<IReadOnlyList<Source>> StandFor) Apart(
        IReadOnlyList<Feed> feeds,
        Func<Source, bool> isOwn
    )
    {
        var chosen = feeds.Where(f => f.IsLoose).Select(f => f.Source).ToHashSet();
        var foreign = Atoms(feeds.Where(f => !f.IsLoose).Select(f => f.Sources).Distinct())
            .Select(atom => atom.Members.ToLookup(isOwn))
            .Select(members => (Own: members[true], Others: Ranked(members[false], chosen)))
            .ToArray();
        foreach (var (own, others) in foreign)
            chosen.UnionWith(own.Concat(others.Take(2)));
        return (
            [
                .. feeds.SelectMany(f =>
                    f.Sources.Members.Where(chosen.Contains).Select(s => With(f, Alone(s)))
                ),
            ],
            [.. foreign.Where(f => f.Others.Any(s => !chosen.Contains(s))).Select(f => f.Others)]
        );
    }

    /// <summary>Those that are needed anyway first.</summary>
    private static Source[] Ranked(IEnumerable<Source> sources, HashSet<Source> needed) =>
        [.. sources.OrderByDescending(needed.Contains).ThenBy(s => s.Name, StringComparer.Ordinal)];

    /// <summary>
    /// What matters to the part where they arrive, of sources elsewhere. All of them come and go as they please; what comes
    /// through loads may move a coil or not, whichever source it is from: so one does for each isolator.
    /// </summary>
    /// <param name="feeds">Kept ones, source by source.</param>
    public static IEnumerable<Feed> Deciding(IEnumerable<Feed> feeds)
    {
        var (strong, loose) = Parted(feeds);
        return strong.Concat(OneForEachNet(loose));
    }

    /// <summary>
    /// What matters to the part where they arrive, of its own sources: through loads only where no other source may arrive
    /// so whatever is open.
    /// </summary>
    /// <param name="own">Kept ones, source by source.</param>
    /// <param name="foreign">The deciding ones of other sources.</param>
    public static IEnumerable<Feed> Returning(IEnumerable<Feed> own, IEnumerable<Feed> foreign)
    {
        var (strong, loose) = Parted(own);
        var taken = foreign
            .Where(f => f.IsLoose && f.Through.Isolator is null)
            .Select(f => f.Joint)
            .ToHashSet();
        return strong
            .Concat(OneForEachNet(loose.Where(f => !taken.Contains(f.Joint))))
            .GroupBy(f => (f.Source.Name, f.Conductor.Name, f.Joint))
            .Select(same => same.MinBy(f => f.Grade)!);
    }

    /// <summary>
    /// For each isolator one conductor at each net, another at the next net, so that there is a voltage between nets.
    /// </summary>
    private static IEnumerable<Feed> OneForEachNet(IEnumerable<Feed> loose) =>
        Widened(loose)
            .GroupBy(f => f.Joint)
            .SelectMany(
                (at, nth) =>
                    First(at, homes: 1)
                        .GroupBy(f => f.Through.Isolator?.Tag)
                        .Select(conductors => conductors.ToArray())
                        .Select(conductors => conductors[nth % conductors.Length])
            );

    /// <summary>
    /// What may arrive only once a contact elsewhere has welded, source by source: of each sort of source the first that
    /// arrives at a net, since only one such failure is looked at where only one may happen.
    /// </summary>
    /// <param name="welded">All that may arrive then.</param>
    /// <param name="sound">What may arrive anyway.</param>
    /// <param name="isOwn">The source is the reader's.</param>
    public static IEnumerable<Feed> OnlyWelded(
        IEnumerable<Feed> welded,
        IEnumerable<Feed> sound,
        Func<Source, bool> isOwn
    )
    {
        var anyway = sound.ToLookup(f => f.Joint, StringComparer.Ordinal);
        var (strong, loose) = Parted(welded.Where(f => !anyway[f.Joint].Any(g => Covers(g, f, isOwn))));
        var first = strong
            .GroupBy(f => (f.Joint, f.Source.Sort, f.Conductor.Name, isOwn(f.Source)))
            .SelectMany(g => g.Where(f => f.Source == g.First().Source));
        return first
            .Concat(OneForEachNet(loose))
            .GroupBy(f => (f.Joint, f.Source, f.Conductor.Name, f.Grade))
            .Select(AroundIsolators);
    }

    /// <summary>Where the ways have not one isolator in common none of them isolates.</summary>
    private static Feed AroundIsolators(IEnumerable<Feed> same)
    {
        var first = same.First();
        return same.All(f => f.Through.Isolator?.Tag == first.Through.Isolator?.Tag)
            ? first
            : first with
            {
                Through = first.Through with { Isolator = null },
            };
    }

    /// <summary>Where the one arrives the other brings nothing new.</summary>
    private static bool Covers(Feed one, Feed other, Func<Source, bool> isOwn) =>
        one.Grade <= other.Grade
        && isOwn(one.Source) == isOwn(other.Source)
        && (one.Through.Isolator is null || one.Through.Isolator.Tag == other.Through.Isolator?.Tag)
        && (other.IsLoose ? !one.IsEarthed : Same(one, other));

    private static bool Same(Feed one, Feed other) =>
        one.Source.Sort == other.Source.Sort && one.Conductor.Name == other.Conductor.Name;

    /// <summary>Earthed conductors make nothing live through loads.</summary>
    private static (Feed[] Strong, Feed[] Loose) Parted(IEnumerable<Feed> feeds)
    {
        var all = feeds.ToArray();
        return ([.. all.Where(f => !f.IsLoose)], [.. all.Where(f => f.IsLoose && !f.IsEarthed)]);
    }

    /// <summary>Sources of one sort whose conductors arrive at the same nets in the same way are put together.</summary>
    private IEnumerable<Feed> Strong(IEnumerable<Feed> feeds)
    {
        var arriving = feeds
            .GroupBy(f => (f.Joint, f.Source.Sort, f.Conductor.Name))
            .SelectMany(Widened)
            .ToLookup(f => f.Sources);
        return Atoms(arriving.Select(f => f.Key))
            .Select(atom => (atom.Members, Feeds: Strongest(atom.Of.SelectMany(set => arriving[set]))))
            .GroupBy(atom => $"{atom.Members[0].Sort}\n{string.Join('\n', atom.Feeds.Select(Text))}")
            .SelectMany(alike =>
            {
                var sources = pool.Of(alike.SelectMany(atom => atom.Members));
                return alike.First().Feeds.Select(f => With(f, sources));
            });
    }

    private static string Text(Feed feed) =>
        $"{feed.Joint} {feed.Conductor.Name} {feed.Grade} {feed.Through.Isolator?.Tag} {feed.Through.Clears}";

    /// <summary>The parts into which sets of sources cut each other, each with the sets that hold it.</summary>
    private static IEnumerable<(IReadOnlyList<Source> Members, IReadOnlyList<Alike> Of)> Atoms(
        IEnumerable<Alike> sets
    )
    {
        var holding = new Dictionary<Source, List<Alike>>();
        foreach (var set in sets)
        foreach (var source in set.Members)
            if (holding.TryGetValue(source, out var others))
                others.Add(set);
            else
                holding.Add(source, [set]);
        return holding
            .GroupBy(h => h.Value, h => h.Key, SameSets.Comparer)
            .Select(g => ((IReadOnlyList<Source>)[.. g], (IReadOnlyList<Alike>)g.Key));
    }

    /// <summary>For each conductor, net and isolator the best, if that is better than what none isolates.</summary>
    private static Feed[] Strongest(IEnumerable<Feed> feeds) =>
        [
            .. feeds
                .GroupBy(f => (f.Joint, f.Conductor.Name))
                .SelectMany(at =>
                {
                    var best = at.GroupBy(f => f.Through.Isolator?.Tag).Select(Merged).ToArray();
                    var free = best.FirstOrDefault(f => f.Through.Isolator is null);
                    return free is null ? best : best.Where(f => f == free || f.Grade < free.Grade);
                })
                .OrderBy(Text, StringComparer.Ordinal),
        ];

    /// <summary>As good as the best of them, and cleared only where each of them is.</summary>
    private static Feed Merged(IEnumerable<Feed> feeds)
    {
        var best = feeds.MinBy(f => f.Grade)!;
        return best with { Through = best.Through with { Clears = feeds.All(f => f.Through.Clears) } };
    }

    /// <summary>The source by itself.</summary>
    public Alike Alone(Source source) => pool.Of([source]);

    private IEnumerable<Feed> Homes(Feed feed) =>
        feed.Sources.Members.DistinctBy(s => s.Home).Take(homes).Select(s => With(feed, Alone(s)));

    private static Feed With(Feed feed, Alike sources) =>
        feed.Sources == sources
            ? feed
            : feed with
            {
                Sources = sources,
                Conductor = sources.First.Supply.Conductors.First(c => c.Name == feed.Conductor.Name),
            };

    /// <summary>At one net: for each isolator the first sources, and of these every conductor.</summary>
    private static IEnumerable<Feed> First(IEnumerable<Feed> feeds, int homes)
    {
        var byIsolator = Widened(feeds)
            .GroupBy(f => f.Through.Isolator?.Tag)
            .Select(g => (Isolator: g.Key, Feeds: FirstHomes(g, homes)))
            .ToArray();
        var free = byIsolator.FirstOrDefault(g => g.Isolator is null).Feeds;
        return free?.Select(f => f.Source.Home).Distinct().Count() >= homes
            ? free
            : byIsolator.SelectMany(g => g.Feeds);
    }

    private static Feed[] FirstHomes(IEnumerable<Feed> feeds, int homes)
    {
        var first = feeds
            .GroupBy(f => f.Source)
            .OrderBy(s => s.Key.Supply.ExtraLow)
            .ThenByDescending(s => s.Max(f => Math.Abs(f.Conductor.Volts)))
            .ThenBy(s => s.Key.Name, StringComparer.Ordinal)
            .DistinctBy(s => s.Key.Home)
            .Take(homes);
        return [.. first.SelectMany(s => s.DistinctBy(f => f.Conductor.Name))];
    }

    /// <summary>With too many isolators the feeds count as isolated by none: that is never wrong on the safe side.</summary>
    private static IEnumerable<Feed> Widened(IEnumerable<Feed> feeds)
    {
        var all = feeds.ToArray();
        var isolators = all.Select(f => f.Through.Isolator?.Tag).OfType<string>().Distinct().Count();
        return isolators <= MostIsolators
            ? all
            : all.Select(f => f with { Through = f.Through with { Isolator = null } });
    }

    private sealed class SameSets : IEqualityComparer<List<Alike>>
    {
        public static readonly SameSets Comparer = new();

        public bool Equals(List<Alike>? x, List<Alike>? y) => x!.SequenceEqual(y!);

        public int GetHashCode(List<Alike> sets)
        {
            var hash = new HashCode();
            foreach (var set in sets)
                hash.Add(set);
            return hash.ToHashCode();
        }
    }
}
