using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>A conductor of a supply or of a converter's output that reaches a net.</summary>
internal sealed record Feed(Supply Supply, SupplyConductor Conductor)
{
    /// <summary>Volts between the two; null when they are of different supplies that are not in step.</summary>
    public double? VoltsTo(Feed other)
    {
        if (Supply.Group != other.Supply.Group)
            return null;
        var (a, b) = (PhasorOf(Conductor), PhasorOf(other.Conductor));
        return (a - b).Magnitude;
    }

    private static System.Numerics.Complex PhasorOf(SupplyConductor c) =>
        System.Numerics.Complex.FromPolarCoordinates(c.Volts, c.Degrees * Math.PI / 180);
}

/// <summary>
/// Which supply conductor stands behind each net, and which nets are earthed, found along what a load's feed passes
/// and along plain conductors, whatever stands open.
/// </summary>
internal sealed class Feeds
{
    private readonly Dictionary<string, Feed> feeds = new(StringComparer.Ordinal);
    private readonly HashSet<string> earthed = new(StringComparer.Ordinal);

    /// <param name="netlist">Null when the panel has none: nothing is known to be fed.</param>
    /// <param name="untraced">Nets that go where nobody looked: what may come from there is no rail's supply.</param>
    public Feeds(Netlist? netlist, IReadOnlySet<string> untraced)
    {
        if (netlist is null)
            return;
        var ways = Ways(netlist).ToLookup(w => w.From, w => w.To, StringComparer.Ordinal);
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));
        var sources = new Queue<string>();
        foreach (var supply in supplies)
        foreach (var conductor in supply.Conductors.Where(_ => !IsUntraced(supply, untraced)))
            if (feeds.TryAdd(conductor.Net, new(supply, conductor)))
                sources.Enqueue(conductor.Net);
        while (sources.TryDequeue(out var net))
            foreach (var next in ways[net].Where(n => n != netlist.Earth && feeds.TryAdd(n, feeds[net])))
                sources.Enqueue(next);
        var grounds = new Queue<string>([netlist.Earth]);
        while (grounds.TryDequeue(out var net))
            foreach (var next in ways[net].Where(earthed.Add))
                grounds.Enqueue(next);
    }

    public Feed? At(string net) => feeds.GetValueOrDefault(net);

    public bool IsEarthed(string net) => earthed.Contains(net);

    private static bool IsUntraced(Supply supply, IReadOnlySet<string> untraced) =>
        supply.Conductors is [var only] && untraced.Contains(only.Net);

    private static IEnumerable<(string From, string To)> Ways(Netlist netlist) =>
        netlist
            .Elements.Where(e =>
                e.Type == ElementType.Conductor
                || (e.Power && e.Type is ElementType.Contact or ElementType.Thermal or ElementType.Series)
            )
            .Where(e => e.Type != ElementType.Series || (e.A != netlist.Earth && e.B != netlist.Earth))
            .SelectMany(e => new[] { (e.A, e.B), (e.B, e.A) });
}
