using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>What some unearthed conductors make live: by load reach along any path, and loosely from there.</summary>
/// <param name="mesh">What conducts.</param>
/// <param name="earthTied">For each net, when earth holds it.</param>
/// <param name="links">The loose links.</param>
/// <param name="unearthed">The conductors' load reach.</param>
/// <param name="sources">The conductors' nets, each with the condition under which it is unearthed.</param>
internal sealed class LiveSpread(
    Mesh mesh,
    IReadOnlyList<Diagram> earthTied,
    Lazy<Elimination> links,
    Lazy<Spread[]> unearthed,
    IReadOnlyList<KeyValuePair<int, Diagram>> sources
)
{
    private readonly Dictionary<int, Diagram> reached = [];
    private readonly HashSet<int> fed =
    [
        .. sources.Where(s => !s.Value.IsFalse).Select(s => mesh.Island(s.Key)),
    ];
    private Spread? live;

    /// <summary>By load reach, whether earth holds the net or not.</summary>
    public Diagram Reached(int net)
    {
        if (!fed.Contains(mesh.Island(net)))
            return Diagram.False;
        if (!reached.TryGetValue(net, out var result))
        {
            result = mesh.Table.AnyOf(unearthed.Value.Select(spread => spread[net]));
            reached.Add(net, result);
        }
        return result;
    }

    public Diagram Live(int net) => (live ??= links.Value.Spread(Seeds()))[net];

    /// <summary>
    /// What spreads loosely starts only where earth does not hold the net: else all that hangs on the earth of a
    /// resistance-earthed system by a coil would be live for ever. Where earth can hold no net that a conductor may come to
    /// by load reach, every such way is a loose way too, and it starts at the conductor alone.
    /// </summary>
    public IEnumerable<KeyValuePair<int, Diagram>> Seeds()
    {
        var contested = Enumerable
            .Range(0, mesh.NetCount)
            .Where(net => !earthTied[net].IsFalse)
            .Select(mesh.Island)
            .ToHashSet();
        return Enumerable
            .Range(0, mesh.NetCount)
            .Where(net => contested.Contains(mesh.Island(net)) && fed.Contains(mesh.Island(net)))
            .Select(net => KeyValuePair.Create(net, mesh.Table.Except(Reached(net), earthTied[net])))
            .Concat(sources.Where(s => !contested.Contains(mesh.Island(s.Key))));
    }
}
