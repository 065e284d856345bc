using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Which elements carry, by every node taken out.</summary>
internal sealed partial class PlainNetwork
{
    public bool Carries(string id)
    {
        var element = netlist.Elements.Single(e => e.Id == id);
        if (!Holds(element.Closed) || element.Type == ElementType.Load && Joined(element.A, element.B))
            return false;
        return Lasting
            .Select(s => s.Supply)
            .Distinct()
            .Any(z => InBlock(z, element.A, element.B, [.. BothWays(Conducting)], s => s.Store is null));
    }

    public bool WouldCarry(string a, string b)
    {
        if (Joined(a, b))
            return false;
        var links = BothWays(Conducting.Concat(Leaking))
            .Concat(NumberedCouplings().SelectMany(l => new[] { l, (l.To, l.From) }))
            .ToList();
        return on.Select(s => s.Supply).Distinct().Any(z => InBlock(z, a, b, links, _ => true));
    }

    /// <summary>Whatever node but z is taken out, one of the ends still reaches z.</summary>
    private bool InBlock(
        Supply z,
        string a,
        string b,
        List<(string From, string To)> links,
        Func<Supply, bool> counts
    )
    {
        var all = new List<(string From, string To)>(links);
        foreach (var (supply, conductor) in on.Where(s => counts(s.Supply)))
        {
            all.Add(("z " + supply.Name, conductor.Net));
            all.Add((conductor.Net, "z " + supply.Name));
        }
        var hub = "z " + z.Name;
        var nodes = all.SelectMany(l => new[] { l.From, l.To }).Append(a).Append(b).Distinct();
        return nodes
            .Where(v => v != hub)
            .All(v =>
            {
                var reached = Flood([hub], all.Where(l => l.From != v && l.To != v));
                return v != a && reached.Contains(a) || v != b && reached.Contains(b);
            });
    }
}
