using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>What some unearthed conductors make live: by load reach along any path, and loosely from there.</summary>
internal sealed class LiveSpread(
    Mesh mesh,
    IReadOnlyList<Diagram> earthTied,
    Elimination links,
    IReadOnlyList<Spread> unearthed
)
{
    private readonly Dictionary<int, Diagram> reached = [];
    private Spread? live;

    /// <summary>By load reach, whether earth holds the net or not.</summary>
    public Diagram Reached(int net)
    {
        if (!reached.TryGetValue(net, out var result))
        {
            result = mesh.Table.AnyOf(unearthed.Select(spread => spread[net]));
            reached.Add(net, result);
        }
        return result;
    }

    public Diagram Live(int net) => (live ??= links.Spread(Seeds()))[net];

    /// <summary>
    /// What spreads loosely starts only where earth does not hold the net: else all that hangs on the earth of a
    /// resistance-earthed system by a coil would be live for ever.
    /// </summary>
    private IEnumerable<KeyValuePair<int, Diagram>> Seeds() =>
        Enumerable
            .Range(0, mesh.NetCount)
            .Select(net => KeyValuePair.Create(net, mesh.Table.Except(Reached(net), earthTied[net])));
}
