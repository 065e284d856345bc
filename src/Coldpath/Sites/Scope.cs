using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Some parts of a site as one netlist, the rest standing for what it may do to them.</summary>
internal sealed class Scope
{
    private readonly Site site;
    private readonly Outlines outlines;
    private readonly SiteNets nets;
    private readonly SitePart[] chosen;

    /// <param name="site">The site.</param>
    /// <param name="all">Of the site, for any number of readers.</param>
    /// <param name="parts">Those of it that are followed.</param>
    public Scope(Site site, Outlines all, IReadOnlyCollection<SitePart> parts)
    {
        this.site = site;
        outlines = parts.Count < all.Parts.Count ? all.For(parts.Count) : all;
        nets = new(outlines.Parts);
        var tags = parts.Select(p => p.Tag).ToHashSet(StringComparer.Ordinal);
        chosen = [.. outlines.Parts.Where(p => tags.Contains(p.Tag))];
    }

    /// <summary>In the site's names, failures included; with the site's own intents.</summary>
    public Netlist Netlist()
    {
        var joined = Joined(chosen);
        return new Surroundings(joined, [], HomeOf).With(outlines.Around(chosen).Neighbours, nets.At);
    }

    /// <summary>What the chosen parts are made of, in the site's names.</summary>
    public Panel Panel() =>
        site.Own.Panel with
        {
            Devices = [.. chosen.SelectMany(Devices)],
            Nets = [],
            Chains = [],
            Bonds = [],
            Untraced = [.. chosen.SelectMany(Untraced)],
        };

    private IEnumerable<PlacedDevice> Devices(SitePart part) =>
        part.Member is { } member
            ? member.Bound.Panel.Devices.Select(d => d with { Tag = member.Named(d.Tag) })
            : site.Own.Panel.Devices.Where(d => part.Whole.Devices.Any(own => own.Tag == d.Tag));

    private static IEnumerable<UntracedPoint> Untraced(SitePart part) =>
        part.Member is { } member
            ? member.Bound.Panel.Untraced.Select(u => u with { Point = member.Named(u.Point) })
            : [];

    private Func<string, string>? HomeOf(Source source) =>
        chosen.FirstOrDefault(p => p.Tag == source.Home) is { } home ? net => nets.Of(home, net) : null;

    private Netlist Joined(IReadOnlyList<SitePart> chosen)
    {
        Netlist[] named = [.. chosen.Select(Named)];
        var own = site.Own.Netlist!;
        return own with
        {
            Nets = [.. named.SelectMany(n => n.Nets).Distinct()],
            Supplies = [.. named.SelectMany(n => n.Supplies)],
            Converters = [.. named.SelectMany(n => n.Converters)],
            Couplings = [.. named.SelectMany(n => n.Couplings)],
            Variables = [.. named.SelectMany(n => n.Variables)],
            Powered = [.. named.SelectMany(n => n.Powered)],
            Elements = [.. named.SelectMany(n => n.Elements)],
            Devices = [.. named.SelectMany(n => n.Devices)],
            Loads = [.. named.SelectMany(n => n.Loads)],
            Constraints = [.. named.SelectMany(n => n.Constraints)],
            Pairs = [.. named.SelectMany(n => n.Pairs)],
            Points = [.. named.SelectMany(n => n.Points).DistinctBy(p => p.Name)],
            Intents = [.. own.Intents.Select(i => i with { When = Seen(i.When) })],
            Assumed = [.. named.SelectMany(n => n.Assumed).Distinct(), .. Followed()],
        };
    }

    private IEnumerable<string> Followed()
    {
        if (chosen.Length < outlines.Parts.Count)
            yield return $"of the site {string.Join(", ", chosen.Select(p => p.Tag))} were followed; the rest may do to them "
                + "whatever its wiring allows";
    }

    private Netlist Named(SitePart part)
    {
        var named = new NetlistRenaming((_, net) => nets.Of(part, net), name => part.Prefix + name).Of(
            part.Whole
        );
        return part.Member is null
            ? named
            : named with
            {
                Points = [.. named.Points.Select(p => p with { Place = PlaceIn(part, p.Place) })],
                Devices = [.. named.Devices.Select(d => d with { Place = PlaceIn(part, d.Place) })],
            };
    }

    private static string PlaceIn(SitePart part, string? place) =>
        place is null ? part.Tag : $"{part.Tag}, {place}";

    /// <summary>The site's intents speak of its own nets.</summary>
    private Expression Seen(Expression condition) =>
        NetlistRenaming.Of(condition, net => net == site.Own.Netlist!.Earth ? net : nets.At(net));
}
