using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A way through a device from a terminal to another, through nets inside it; to itself where it ends inside.</summary>
/// <param name="Hops">One after another; each holds the elements that lie side by side.</param>
internal sealed record ElementPath(string From, string To, IReadOnlyList<IReadOnlyList<Element>> Hops)
{
    public bool IsThrough => From != To;

    /// <summary>Passing a load: a winding, not a pole.</summary>
    public bool IsLoad => Hops.Any(h => h.Any(e => e.Type == ElementType.Load));

    public IReadOnlyList<ElementType> Types => [.. Hops.Select(h => h[0].Type)];

    /// <summary>The shortest ways from every terminal along elements that a load's feed can pass.</summary>
    public static IReadOnlyList<ElementPath> Of(Blueprint blueprint, IReadOnlyList<string> terminals)
    {
        var from = blueprint.Network.Elements.Where(e => e.Power).ToLookup(e => e.A, StringComparer.Ordinal);
        var ends = terminals.ToHashSet(StringComparer.Ordinal);
        return [.. terminals.SelectMany(t => WaysFrom(t, from, ends))];
    }

    private static IEnumerable<ElementPath> WaysFrom(
        string start,
        ILookup<string, Element> from,
        IReadOnlySet<string> ends
    )
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { start };
        var open = new Queue<(string At, IReadOnlyList<IReadOnlyList<Element>> Hops)>();
        open.Enqueue((start, []));
        var inside = default(IReadOnlyList<IReadOnlyList<Element>>);
        var through = false;
        while (open.TryDequeue(out var here))
            foreach (var hop in from[here.At].GroupBy(e => e.B))
            {
                if (!seen.Add(hop.Key))
                    continue;
                IReadOnlyList<IReadOnlyList<Element>> hops = [.. here.Hops, [.. hop]];
                if (!ends.Contains(hop.Key))
                {
                    inside = hops;
                    open.Enqueue((hop.Key, hops));
                    continue;
                }
                through = true;
                yield return new(start, hop.Key, hops);
            }
        if (!through && inside is not null)
            yield return new(start, start, inside);
    }
}
