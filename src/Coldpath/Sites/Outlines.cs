using System.Collections.Concurrent;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// What every part of a site can do to the nets it shares, with all that stands behind it: the least answer that fits,
/// found by passing outlines from part to part until none changes.
/// </summary>
internal sealed class Outlines
{
    private readonly Dictionary<(SitePart, Bundle), Outline> from = [];
    private readonly Dictionary<SitePart, List<Bundle>> bundles = [];

    private readonly Site site;
    private readonly bool welded;

    /// <summary>The same when contacts may weld.</summary>
    private readonly Lazy<Outlines> weldable;
    private readonly int homes;
    private readonly Arrivals arrivals;
    private readonly ConcurrentDictionary<int, Lazy<Outlines>> wider = [];

    public Outlines(Site site)
        : this(site, SiteParts.Of(site), welded: false, readers: 1) { }

    /// <param name="site">The site.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="welded">Contacts may weld: what is never closed together may be passed on one way.</param>
    /// <param name="readers">Of how many parts together the surroundings will be asked.</param>
    private Outlines(Site site, IReadOnlyList<SitePart> parts, bool welded, int readers)
    {
        (this.site, this.welded, homes) = (site, welded, readers + 1);
        weldable = new(() => new Outlines(site, parts, welded: true, readers));
        arrivals = new(homes);
        Parts = parts;
        foreach (var part in Parts)
            bundles.Add(part, []);
        Bundles = [.. BundlesOf(site)];
        foreach (var bundle in Bundles)
        foreach (var part in bundle.Parts)
        {
            bundles[part].Add(bundle);
            from.Add((part, bundle), Outline.Nothing);
        }
        Settle();
    }

    /// <summary>The same site for so many readers together.</summary>
    public Outlines For(int readers) =>
        readers < homes
            ? this
            : wider.GetOrAdd(readers, n => new(() => new Outlines(site, Parts, welded, n))).Value;

    public IReadOnlyList<SitePart> Parts { get; }

    public IReadOnlyList<Bundle> Bundles { get; }

    public IReadOnlyList<Bundle> Of(SitePart part) => bundles[part];

    /// <summary>What all others can do to the nets that these parts share with them.</summary>
    public Around Around(params IReadOnlyCollection<SitePart> readers)
    {
        var tags = readers.Select(r => r.Tag).ToHashSet(StringComparer.Ordinal);
        var own = Parts.Where(p => tags.Contains(p.Tag)).ToHashSet();
        var kept = new Arrivals(homes);
        var outside =
            from bundle in own.SelectMany(p => bundles[p]).Distinct()
            let others = bundle.Parts.Where(p => !own.Contains(p)).ToArray()
            where others.Length > 0
            select (bundle, others[0].Label, From(others, bundle, kept));
        return new(
            outside.ToArray(),
            kept,
            source => tags.Contains(source.Home),
            welded ? null : weldable.Value.Around(readers)
        );
    }

    /// <summary>What these of its parts can do to a bundle's nets, with all that stands behind them.</summary>
    private Outline From(IEnumerable<SitePart> parts, Bundle bundle, Arrivals kept)
    {
        var all = parts.Select(p => from[(p, bundle)]).ToArray();
        return all.Length == 1
            ? all[0]
            : new(
                kept.Kept(all.SelectMany(o => o.Feeds)),
                Outline.Best(all.SelectMany(o => o.Ties)),
                [.. all.SelectMany(o => o.Power).Distinct().Order(StringComparer.Ordinal)]
            );
    }

    private IEnumerable<Bundle> BundlesOf(Site site)
    {
        var sharing = Parts
            .SelectMany((p, i) => p.Nets.Keys.Select(joint => (Joint: joint, Part: i)))
            .ToLookup(p => p.Joint, p => p.Part, StringComparer.Ordinal);
        return from joint in site.Joints
            where sharing[joint.Net].Skip(1).Any()
            group joint.Net by string.Join(' ', sharing[joint.Net]) into shared
            select new Bundle([.. shared], [.. sharing[shared.First()].Select(i => Parts[i])]);
    }

    /// <summary>The leaves are served first, so that in a tree each outline is found right at the second attempt.</summary>
    private void Settle()
    {
        var waiting = new Queue<SitePart>(Parts.OrderBy(p => bundles[p].Count));
        var queued = Parts.ToHashSet();
        while (waiting.TryDequeue(out var part))
        {
            queued.Remove(part);
            foreach (var bundle in bundles[part])
            {
                var outline = Find(part, bundle);
                if (outline.Says(from[(part, bundle)]))
                    continue;
                from[(part, bundle)] = outline;
                foreach (var other in bundle.Parts.Where(p => p != part && queued.Add(p)))
                    waiting.Enqueue(other);
            }
        }
    }

    private Outline Find(SitePart part, Bundle to)
    {
        var others = bundles[part]
            .Where(b => b != to)
            .Select(b => From(b.Parts.Where(p => p != part), b, arrivals))
            .ToArray();
        var ties = others
            .SelectMany(o => o.Ties)
            .Select(t => new Link(part.Nets[t.A], part.Nets[t.B], t.Grade));
        return new PartOutline(part, to, new BestWays(part.Spread.With(ties), welded), arrivals).Of(others);
    }
}
