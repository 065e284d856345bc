namespace Coldpath.Sites;

/// <summary>Which parts of a site a question about some of them has to follow.</summary>
internal static class ScopeParts
{
    /// <summary>The parts that are named, and all on the shortest ways from them to what feeds them and to each other.</summary>
    /// <param name="outlines">The site.</param>
    /// <param name="names">Devices, points or variables as the site calls them; those that it does not know are passed over.</param>
    public static IReadOnlyCollection<SitePart> Of(Outlines outlines, IReadOnlyCollection<string> names)
    {
        var named = outlines.Parts.Where(p => names.Any(n => Holds(p, n))).ToArray();
        var chosen = named.ToHashSet();
        foreach (var part in named)
        {
            var homes = Sources(outlines, part).Select(s => s.Home).ToHashSet(StringComparer.Ordinal);
            chosen.UnionWith(
                outlines.Parts.Where(p => homes.Contains(p.Tag)).SelectMany(p => Way(outlines, part, p))
            );
            chosen.UnionWith(named.SelectMany(other => Way(outlines, part, other)));
        }
        return chosen;
    }

    private static bool Holds(SitePart part, string name) =>
        part.Member is not null
            ? name == part.Tag || name.StartsWith(part.Prefix, StringComparison.Ordinal)
            : part.Whole.Devices.Any(d =>
                name == d.Tag || name.StartsWith($"{d.Tag}:", StringComparison.Ordinal)
            );

    private static IEnumerable<Source> Sources(Outlines outlines, SitePart part) =>
        outlines.Around(part).Feeds.Where(f => !f.IsLoose).Select(f => f.Source).Distinct();

    /// <summary>Breadth first; empty when they are not joined at all.</summary>
    private static IReadOnlyList<SitePart> Way(Outlines outlines, SitePart from, SitePart to)
    {
        var before = new Dictionary<SitePart, SitePart> { [from] = from };
        var waiting = new Queue<SitePart>([from]);
        while (waiting.TryDequeue(out var part) && !before.ContainsKey(to))
            foreach (var next in outlines.Of(part).SelectMany(b => b.Parts))
                if (before.TryAdd(next, part))
                    waiting.Enqueue(next);
        if (!before.ContainsKey(to))
            return [];
        var way = new List<SitePart> { to };
        while (way[^1] != from)
            way.Add(before[way[^1]]);
        return way;
    }
}
