using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>What some unearthed conductors make live: by load reach along any path, and loosely from there.</summary>
internal sealed class LiveSpread(
    Mesh mesh,
    IReadOnlyList<Diagram> earthTied,
    LooseLinks links,
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

    public Diagram Live(int net) => (live ??= links.Eliminated.Spread(Seeds()))[net];

    /// <summary>
    /// Nets reached and not held by earth, and those one link away from a net that is reached but held: only what
    /// comes after the net so reached must be free of earth.
    /// </summary>
    private IEnumerable<KeyValuePair<int, Diagram>> Seeds()
    {
        var table = mesh.Table;
        for (var net = 0; net < mesh.NetCount; net++)
        {
            yield return new(net, table.Except(Reached(net), earthTied[net]));
            var held = table.And(Reached(net), earthTied[net]);
            if (held.IsFalse)
                continue;
            foreach (var (next, condition) in links.Graph.From(net))
            {
                var free = next < earthTied.Count ? !earthTied[next] : Diagram.True;
                yield return new(next, table.AllOf(held, condition, free));
            }
        }
    }
}
