using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// How far current can spread in a netlist, whatever the state: every contact is taken as closed. It stops at the
/// earth and at nets that are bonded to it.
/// </summary>
internal sealed class Spread
{
    private readonly Dictionary<string, List<Link>> from = new(StringComparer.Ordinal);
    private readonly HashSet<string> earthed;

    public Spread(Netlist netlist)
        : this(Links.Of(netlist), Earthed(netlist)) { }

    private Spread(IEnumerable<Link> links, HashSet<string> earthed)
    {
        this.earthed = earthed;
        foreach (var link in links)
            Add(link);
    }

    /// <summary>The best grade at which each net is reached; the start itself is among them.</summary>
    /// <param name="start">A net.</param>
    /// <param name="grade">The grade at which it is reached.</param>
    /// <param name="but">A converter whose windings are left out: its own output does not come back through them.</param>
    /// <param name="without">A device whose elements are taken out.</param>
    /// <param name="more">Links beside the netlist's own.</param>
    public IReadOnlyDictionary<string, Grade> Reach(
        string start,
        Grade grade,
        string but = "",
        ILookup<string, Link>? more = null,
        string without = ""
    )
    {
        var reached = new Dictionary<string, Grade>(StringComparer.Ordinal) { [start] = grade };
        var waiting = new PriorityQueue<string, Grade>([(start, grade)]);
        while (waiting.TryDequeue(out var net, out var at))
        {
            if (reached[net] < at || (net != start && earthed.Contains(net)))
                continue;
            foreach (var link in Leaving(net, more).Where(l => !IsOut(l, but, without)))
            {
                var next = (Grade)Math.Max((int)at, (int)link.Grade);
                if (reached.TryGetValue(link.B, out var known) && known <= next)
                    continue;
                reached[link.B] = next;
                waiting.Enqueue(link.B, next);
            }
        }
        return reached;
    }

    private static bool IsOut(Link link, string but, string without) =>
        (but.Length > 0 && link.Owner == but) || (without.Length > 0 && link.Device == without);

    private IEnumerable<Link> Leaving(string net, ILookup<string, Link>? more)
    {
        IEnumerable<Link> own = from.TryGetValue(net, out var links) ? links : [];
        return more is null ? own : own.Concat(more[net]);
    }

    private void Add(Link link)
    {
        Of(link.A).Add(link);
        if (!link.OneWay)
            Of(link.B).Add(link with { A = link.B, B = link.A });
    }

    private List<Link> Of(string net)
    {
        if (!from.TryGetValue(net, out var links))
            from.Add(net, links = []);
        return links;
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
