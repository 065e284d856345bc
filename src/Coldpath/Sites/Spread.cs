using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// How far current can spread in a netlist, whatever the state: every contact is taken as closed. It stops at the
/// earth and at nets that are bonded to it.
/// </summary>
internal sealed class Spread
{
    private readonly IReadOnlyDictionary<string, int> places;
    private readonly bool[] earthed;
    private readonly List<Hop>[][] layers;

    public Spread(Netlist netlist)
    {
        places = netlist.Nets.Index().ToDictionary(n => n.Item, n => n.Index, StringComparer.Ordinal);
        var atEarth = Earthed(netlist);
        earthed = [.. netlist.Nets.Select(atEarth.Contains)];
        layers = [Hops(Links.Of(netlist))];
    }

    private Spread(Spread within, IEnumerable<Link> more)
    {
        (places, earthed) = (within.places, within.earthed);
        layers = [.. within.layers, Hops(more)];
    }

    /// <summary>The same with more links between its nets.</summary>
    public Spread With(IEnumerable<Link> more) => new(this, more);

    /// <summary>The best grade at which each net is reached; the start itself is among them.</summary>
    /// <param name="start">A net.</param>
    /// <param name="grade">The grade at which it is reached.</param>
    /// <param name="but">A converter whose windings are left out: its own output does not come back through them.</param>
    /// <param name="without">A device whose elements are taken out.</param>
    /// <param name="passing">What variables are at; null for anything.</param>
    public Reached Reach(
        string start,
        Grade grade,
        string but = "",
        string without = "",
        Passing? passing = null
    )
    {
        passing ??= Passing.Anything;
        var first = places[start];
        var reached = new Reached(places, first, grade);
        Stack<int>[] waiting = [new(), new(), new()];
        waiting[(int)grade].Push(first);
        for (var at = grade; at <= Grade.Loose; at++)
            while (waiting[(int)at].TryPop(out var net))
                if (reached[net] == at && (net == first || !earthed[net]))
                    foreach (var layer in layers)
                    foreach (var hop in layer[net])
                        if (
                            !hop.Link.IsOut(but, without)
                            && passing.Lets(hop.Link)
                            && reached.Improve(net, hop, at) is { } better
                        )
                            waiting[(int)better].Push(hop.To);
        return reached;
    }

    private List<Hop>[] Hops(IEnumerable<Link> links)
    {
        var from = new List<Hop>[places.Count];
        for (var place = 0; place < from.Length; place++)
            from[place] = [];
        foreach (var link in links)
        {
            var (a, b) = (places[link.A], places[link.B]);
            from[a].Add(new(b, link));
            if (!link.OneWay)
                from[b].Add(new(a, link));
        }
        return from;
    }

    /// <summary>The earth, and nets wired to it.</summary>
    public static HashSet<string> Earthed(Netlist netlist) =>
        [
            netlist.Earth,
            .. netlist
                .Elements.Where(e => e.Type == ElementType.Conductor)
                .SelectMany(e =>
                    e.A == netlist.Earth ? [e.B]
                    : e.B == netlist.Earth ? [e.A]
                    : Array.Empty<string>()
                ),
        ];
}
