using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>A panel of a site, or devices of the site's own that hang together, with the nets it shares.</summary>
/// <param name="tag">The panel's tag; for the site's own devices the first of their tags.</param>
/// <param name="prefix">Before its names in the site: "P1/", or nothing.</param>
/// <param name="whole">In its own names, supplies fed by the site left out.</param>
/// <param name="netlist">The same without failures.</param>
/// <param name="nets">Its own net at each joint that it shares.</param>
internal sealed class SitePart(
    string tag,
    string prefix,
    Netlist whole,
    Netlist netlist,
    IReadOnlyDictionary<string, string> nets
)
{
    private IReadOnlyList<Source>? sources;
    private IReadOnlyList<NetlistDevice>? isolators;
    private IReadOnlyList<string>? clearing;
    private readonly Lazy<Spread> spread = new(() => new Spread(netlist));

    public string Tag => tag;
    public string Prefix => prefix;
    public Netlist Whole => whole;
    public Netlist Netlist => netlist;
    public IReadOnlyDictionary<string, string> Nets => nets;

    /// <summary>The panel; null for the site's own devices.</summary>
    public SiteMember? Member { get; init; }

    /// <summary>Supplies of the panel in whose place the site feeds it.</summary>
    public IReadOnlyList<string> Fed { get; init; } = [];

    /// <summary>Wires of the site that join two nets of the panel.</summary>
    public IReadOnlyList<Element> Jumpers { get; init; } = [];

    /// <summary>What others call it in their stories.</summary>
    public string Label => Member is null ? tag : $"panel {tag}";

    public Spread Spread => spread.Value;

    /// <summary>Isolating devices with a position of their own.</summary>
    public IReadOnlyList<NetlistDevice> Isolators =>
        isolators ??= [.. Netlist.Devices.Where(d => d.Isolates is { Variable: not null, Rank: 1 })];

    /// <summary>Tags of devices that open on a short.</summary>
    public IReadOnlyList<string> Clearing =>
        clearing ??= [.. Netlist.Devices.Where(d => d.OpensOnShort.Count > 0).Select(d => d.Tag)];

    /// <summary>Supplies and converters' outputs, as others see them.</summary>
    public IReadOnlyList<Source> Sources => sources ??= [.. FindSources()];

    private IEnumerable<Source> FindSources()
    {
        var earthed = Spread.Earthed(Netlist);
        var supplies = Netlist.Supplies.Concat(Netlist.Converters.Select(c => c.Output)).ToArray();
        return from supply in supplies
            let bonded = supply.Conductors.Where(c => earthed.Contains(c.Net)).Select(c => c.Name)
            let isSynchronised = supplies.Count(s => s.Group == supply.Group) > 1
            select new Source(Prefix + supply.Name, Tag, supply, [.. bonded], isSynchronised);
    }
}
