using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>What is live on the load side of an open main isolator.</summary>
internal static class Isolation
{
    public static IEnumerable<string> Found(Trade trade, Survey survey)
    {
        var netlist = trade.Netlist;
        var section = Sections(netlist);
        foreach (var isolator in netlist.Devices.Where(d => d.Isolates?.Variable is not null))
        {
            var poles = netlist.Elements.Where(e => isolator.Isolates!.Elements.Contains(e.Id)).ToArray();
            var own = netlist.Supplies.Where(s => Meets(s, poles, section)).ToArray();
            if (own.Length == 0)
                continue;
            var nets = Behind(survey, netlist, isolator, own);
            foreach (var supply in netlist.Supplies)
                if (Live(trade, survey, isolator, supply, nets) is { Length: > 0 } points)
                    yield return $"live-behind-main-isolator {isolator.Tag} {string.Join(' ', points)}";
        }
    }

    /// <summary>A pole of the isolator ends in the section of one of the supply's conductors.</summary>
    private static bool Meets(Supply supply, Element[] poles, Dictionary<string, string> section) =>
        supply.Conductors.Any(c =>
            section.TryGetValue(c.Net, out var at)
            && poles.Any(p => section.GetValueOrDefault(p.A) == at || section.GetValueOrDefault(p.B) == at)
        );

    /// <summary>Nets that a supply of the isolator's makes live in some settled state, and never past the isolator.</summary>
    private static HashSet<string> Behind(
        Survey survey,
        Netlist netlist,
        NetlistDevice isolator,
        Supply[] own
    )
    {
        var asked = (
            from net in netlist.Nets
            from supply in own
            select (Net: net, Supply: supply.Name)
        ).ToArray();
        var fed = survey.Happens([
            .. asked.Select(a => Part.All(Part.Settled, Part.Holds(Part.LiveFrom(a.Net, a.Supply)))),
        ]);
        var past = survey.Happens([
            .. asked.Select(a =>
                Part.All(
                    Part.Settled,
                    Part.Holds(Part.LiveFrom(a.Net, a.Supply), isolator.Isolates!.Elements)
                )
            ),
        ]);
        return [.. asked.Where((_, i) => fed[i] && !past[i]).Select(a => a.Net)];
    }

    private static string[] Live(
        Trade trade,
        Survey survey,
        NetlistDevice isolator,
        Supply supply,
        HashSet<string> nets
    )
    {
        var points = trade
            .Netlist.Points.Where(p =>
                p.Device is not null && p.Device != isolator.Tag && nets.Contains(p.Net)
            )
            .ToArray();
        var open = isolator.Isolates!.Elements.Select(id => Part.Not(new { closed = id })).ToArray();
        var live = survey.Happens([
            .. points.Select(p =>
                Part.All(
                    Part.Settled,
                    Part.Holds(
                        Part.All([.. open, Part.LiveFrom(p.Net, supply.Name), Dangerous(trade, p.Net)])
                    )
                )
            ),
        ]);
        return [.. points.Zip(live).Where(p => p.Second).Select(p => p.First.Name)];
    }

    /// <summary>Not by extra-low voltage alone.</summary>
    private static object Dangerous(Trade trade, string net) =>
        Part.Any(trade.EverySupply.Where(s => !s.ExtraLow).Select(s => Part.LiveFrom(net, s.Name)));

    /// <summary>Each net with the first net of its section; bonds to earth make no section.</summary>
    private static Dictionary<string, string> Sections(Netlist netlist)
    {
        var isolating = netlist.Devices.SelectMany(d => d.Isolates?.Elements ?? []).ToHashSet();
        var section = netlist.Nets.Where(n => n != netlist.Earth).ToDictionary(n => n, n => n);
        foreach (
            var e in netlist.Elements.Where(e =>
                e.Type is ElementType.Conductor or ElementType.Thermal
                && !isolating.Contains(e.Id)
                && section.ContainsKey(e.A)
                && section.ContainsKey(e.B)
            )
        )
        {
            var (keep, change) = (section[e.A], section[e.B]);
            foreach (var net in section.Keys.Where(n => section[n] == change).ToArray())
                section[net] = keep;
        }
        return section;
    }
}
