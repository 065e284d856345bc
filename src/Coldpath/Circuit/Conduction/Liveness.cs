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
        allLinks = new(() => LooseLinks.Eliminated(mesh, earthTied, withCouplings: true));
        linksWithoutCouplings = new(() =>
            mesh.Couplings().Any()
                ? LooseLinks.Eliminated(mesh, earthTied, withCouplings: false)
                : allLinks.Value
        );
        all = new(() => From(_ => true, allLinks.Value));
        lasting = new(() =>
            sources.All.Any(s => s.IsStored) ? From(s => !s.IsStored, allLinks.Value) : all.Value
        );
        uncoupled = new(() =>
            mesh.Couplings().Any() ? From(s => !s.IsStored, linksWithoutCouplings.Value) : lasting.Value
        );
        notExtraLow = new(() =>
            sources.All.Any(s => s.Supply.ExtraLow)
                ? From(s => !s.Supply.ExtraLow, allLinks.Value)
                : all.Value
        );
    }

    public Diagram Live(int net) => all.Value.Live(net);

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
            spread = From(s => s.SupplyIndex == supply, allLinks.Value);
            bySupply.Add(supply, spread);
        }
        return spread.Live(net);
    }

    /// <summary>Live, and only supplies marked as extra-low voltage make it so.</summary>
    public Diagram ExtraLowOnly(int net) => mesh.Table.Except(Live(net), notExtraLow.Value.Live(net));

    /// <summary>An unearthed conductor, stored ones included, comes to the net by load reach.</summary>
    public Diagram Reached(int net) => all.Value.Reached(net);

    private Diagram Solid(int net) => mesh.Table.Except(lasting.Value.Reached(net), earthTied[net]);

    private LiveSpread From(Func<Source, bool> which, Elimination links)
    {
        var unearthed =
            from source in sources.All
            where which(source)
            group KeyValuePair.Create(source.Net, earthing.Unearthed(source)) by source
                .Conductor
                .Polarity into same
            select mesh.Reach(Grade.Load, same.Key).Spread(same);
        return new(mesh, earthTied, links, [.. unearthed]);
    }
}
