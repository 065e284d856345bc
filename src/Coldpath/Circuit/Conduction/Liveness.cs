using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>By what a net is live; the first that holds is said.</summary>
public enum LiveBy
{
    /// <summary>An unearthed conductor reaches it through closed and series elements.</summary>
    Solid,

    /// <summary>Through a load or a leak.</summary>
    Load,

    /// <summary>Only through a transformer, motor frame or other coupling.</summary>
    Backfeed,

    /// <summary>Only from a stored source.</summary>
    Stored,
}

/// <summary>Which nets are live, how and from what.</summary>
internal sealed class Liveness
{
    private readonly Mesh mesh;
    private readonly Sources sources;
    private readonly Earthing earthing;
    private readonly Diagram[] earthTied;
    private readonly Lazy<GuardedGraph> graph;
    private readonly Lazy<Elimination> allLinks;
    private readonly Lazy<Elimination> linksWithoutCouplings;
    private readonly Lazy<LiveSpread> all;
    private readonly Lazy<LiveSpread> lasting;
    private readonly Lazy<LiveSpread> uncoupled;
    private readonly Lazy<LiveSpread> notExtraLow;
    private readonly Dictionary<int, LiveSpread> bySupply = [];

    public Liveness(Mesh mesh, Sources sources, Earthing earthing)
    {
        this.mesh = mesh;
        this.sources = sources;
        this.earthing = earthing;
        earthTied = [.. Enumerable.Range(0, mesh.NetCount).Select(earthing.EarthTied)];
        graph = new(() => LooseLinks.Graph(mesh, earthTied, withCouplings: true));
        allLinks = new(() => new(mesh.Table, graph.Value));
        linksWithoutCouplings = new(() =>
            mesh.Couplings().Any()
                ? new(mesh.Table, LooseLinks.Graph(mesh, earthTied, withCouplings: false))
                : allLinks.Value
        );
        all = new(() => From(_ => true, allLinks));
        lasting = new(() => sources.All.Any(s => s.IsStored) ? From(s => !s.IsStored, allLinks) : all.Value);
        uncoupled = new(() =>
            mesh.Couplings().Any() ? From(s => !s.IsStored, linksWithoutCouplings) : lasting.Value
        );
        notExtraLow = new(() =>
            sources.All.Any(s => s.Supply.ExtraLow) ? From(s => !s.Supply.ExtraLow, allLinks) : all.Value
        );
    }

    public Diagram Live(int net) => all.Value.Live(net);

    /// <summary>One of the nets is live; in a mesh far cheaper than each of them.</summary>
    public Diagram Live(IReadOnlyCollection<int> nets) =>
        Sweep.Reached(mesh.Table, graph.Value, [.. all.Value.Seeds()], nets)
        ?? mesh.Table.AnyOf(nets.Select(Live));

    /// <summary>Live in just this way: each live net in exactly one.</summary>
    public Diagram Live(int net, LiveBy by) =>
        by switch
        {
            LiveBy.Solid => Solid(net),
            LiveBy.Load => mesh.Table.Except(uncoupled.Value.Live(net), Solid(net)),
            LiveBy.Backfeed => mesh.Table.Except(lasting.Value.Live(net), uncoupled.Value.Live(net)),
            _ => mesh.Table.Except(Live(net), lasting.Value.Live(net)),
        };

    /// <summary>Live by the supply's own conductors, whatever others do.</summary>
    public Diagram LiveFrom(int net, int supply)
    {
        if (!bySupply.TryGetValue(supply, out var spread))
        {
            spread = From(s => s.SupplyIndex == supply, allLinks);
            bySupply.Add(supply, spread);
        }
        return spread.Live(net);
    }

    /// <summary>Live, and only supplies marked as extra-low voltage make it so.</summary>
    public Diagram ExtraLowOnly(int net) => mesh.Table.Except(Live(net), notExtraLow.Value.Live(net));

    /// <summary>An unearthed conductor, stored ones included, comes to the net by load reach.</summary>
    public Diagram Reached(int net) => all.Value.Reached(net);

    private Diagram Solid(int net) => mesh.Table.Except(lasting.Value.Reached(net), earthTied[net]);

    private LiveSpread From(Func<Source, bool> which, Lazy<Elimination> links)
    {
        var chosen = sources.All.Where(which).ToArray();
        var spreads = new Lazy<Spread[]>(() => [.. Spreads(chosen)]);
        return new(mesh, earthTied, links, spreads, [.. chosen.Select(Unearthed)]);
    }

    /// <summary>The load reach of the conductors, those of one polarity together.</summary>
    private IEnumerable<Spread> Spreads(IEnumerable<Source> chosen) =>
        from source in chosen
        group Unearthed(source) by source.Conductor.Polarity into same
        select mesh.Reach(Grade.Load, same.Key).Spread(same);

    private KeyValuePair<int, Diagram> Unearthed(Source source) =>
        KeyValuePair.Create(source.Net, earthing.Unearthed(source));
}
