using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Which loads run, by all paths.</summary>
internal sealed partial class PlainNetwork
{
    public bool Runs(Load load, Turning turns) =>
        load.Modes.Any(mode =>
            mode.Joined.All(p => Joined(p.A, p.B))
            && mode.Apart.All(p => !Joined(p.A, p.B))
            && Feeders(mode.Feed.Count)
                .Any(feeders =>
                    (turns == Turning.Any || Turn(feeders, mode.Turns) == turns)
                    && Separate(feeders, [.. mode.Feed.Select(net => component[net])], 0, [])
                )
        );

    private IEnumerable<(Supply Supply, SupplyConductor[] Conductors)> Feeders(int terminals) =>
        from supply in Lasting.GroupBy(s => s.Supply, s => s.Conductor)
        from a in supply
        from b in supply
        where Differ(a, b)
        from chosen in terminals == 2
            ?
            [
                [a, b],
            ]
            : supply.Where(c => Triangle(a, b, c)).Select(c => new[] { a, b, c })
        select (supply.Key, chosen);

    private static Turning Turn((Supply Supply, SupplyConductor[] Conductors) feed, Turning forward)
    {
        var (c, direct) = (feed.Conductors, feed.Supply.Direct);
        var isForward =
            c.Length == 3 ? Forward(c[0], c[1], c[2]) : !direct || Volts(c[0]).Real > Volts(c[1]).Real;
        return (isForward, forward) switch
        {
            (false, Turning.Forward) => Turning.Reverse,
            (false, Turning.Reverse) => Turning.Forward,
            _ => forward,
        };
    }

    private bool Separate(
        (Supply Supply, SupplyConductor[] Conductors) feed,
        int[] terminals,
        int next,
        HashSet<int> taken
    )
    {
        if (next == terminals.Length)
            return true;
        return Paths(component[feed.Conductors[next].Net], terminals[next], [.. taken])
            .Any(path => Separate(feed, terminals, next + 1, [.. taken, .. path]));
    }

    private IEnumerable<HashSet<int>> Paths(int from, int to, HashSet<int> avoid)
    {
        if (avoid.Contains(from))
            yield break;
        if (from == to)
        {
            yield return [from];
            yield break;
        }
        foreach (var element in Conducting.Where(e => e.Type == ElementType.Series))
        {
            var (a, b) = (component[element.A], component[element.B]);
            foreach (var (near, far) in new[] { (a, b), (b, a) })
                if (near == from && far != from)
                    foreach (var path in Paths(far, to, [.. avoid, from]))
                        yield return [from, .. path];
        }
    }
}
