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

    public Outlines(Site site)
    {
        Parts = SiteParts.Of(site);
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

    public IReadOnlyList<SitePart> Parts { get; }

    public IReadOnlyList<Bundle> Bundles { get; }

    public IReadOnlyList<Bundle> Of(SitePart part) => bundles[part];

    /// <summary>What all others can do to a bundle's nets, as a part of it sees them.</summary>
    public Outline Into(SitePart part, Bundle bundle) => From(bundle.Parts.Where(p => p != part), bundle);

    /// <summary>What these of its parts can do to a bundle's nets, with all that stands behind them.</summary>
    public Outline From(IEnumerable<SitePart> parts, Bundle bundle) =>
        Outline.OfAll(parts.Select(p => from[(p, bundle)]));

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
        var others = bundles[part].Where(b => b != to).Select(b => Into(part, b)).ToArray();
        var ties = others
            .SelectMany(o => o.Ties)
            .Select(t => new Link(part.Nets[t.A], part.Nets[t.B], t.Grade))
            .SelectMany(l => new[] { l, l with { A = l.B, B = l.A } })
            .ToLookup(l => l.A, StringComparer.Ordinal);
        return new PartOutline(part, to, ties).Of(others);
    }
}
