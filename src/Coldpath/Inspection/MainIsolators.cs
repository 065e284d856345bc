using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Something live on the load side of an open main isolator.</summary>
/// <param name="Isolator">Its tag.</param>
/// <param name="Supply">What makes it live.</param>
/// <param name="Points">Terminals concerned, in the netlist's order.</param>
/// <param name="States">Reachable settled states in which they are live.</param>
public sealed record LiveBehind(string Isolator, string Supply, IReadOnlyList<Point> Points, Diagram States);

/// <summary>The isolators that a supply's own conductors meet first, and what stays live behind them.</summary>
public static class MainIsolators
{
    public static IEnumerable<LiveBehind> Findings(Evidence evidence) =>
        from isolator in In(evidence)
        let behind = LoadSide(evidence, isolator)
        from supply in evidence.Netlist.Supplies
        let found = Live(evidence, isolator, behind, supply)
        where found is not null
        select found;

    /// <summary>Isolators with a pole in a section that holds a primary supply's conductor.</summary>
    public static IEnumerable<NetlistDevice> In(Evidence evidence)
    {
        var sources = evidence
            .Netlist.Supplies.SelectMany(s => s.Conductors)
            .Where(c => c.Net != evidence.Netlist.Earth)
            .SelectMany(c => evidence.Sections.All.Where(s => s.Nets.Contains(c.Net)))
            .SelectMany(s => s.Nets)
            .ToHashSet();
        return evidence.Devices.Isolators.Where(d =>
            !d.Elsewhere
            && d.Isolates!.Variable is not null
            && d.Isolates.Elements.Select(evidence.Devices.Element)
                .Any(e => sources.Contains(e.A) || sources.Contains(e.B))
        );
    }

    /// <summary>Those live by the supply with every pole of the isolator open, extra-low voltage aside.</summary>
    private static LiveBehind? Live(
        Evidence evidence,
        NetlistDevice isolator,
        IReadOnlyList<Point> behind,
        Supply supply
    )
    {
        var (table, network) = (evidence.Table, evidence.Network);
        var open = table.AllOf(
            isolator.Isolates!.Elements.Select(id => !network.Closed(id)).Prepend(evidence.Settled)
        );
        var all = Diagram.False;
        var points = new List<Point>();
        foreach (var point in behind)
        {
            var live = table.AllOf(
                open,
                network.LiveFrom(point.Net, supply.Name),
                !network.ExtraLowOnly(point.Net)
            );
            if (live.IsFalse)
                continue;
            points.Add(point);
            all = table.Or(all, live);
        }
        return points.Count == 0 ? null : new(isolator.Tag, supply.Name, points, all);
    }

    /// <summary>
    /// Points whose nets the isolator alone parts from its supply: fed through it in some settled state, and by its
    /// supply no other way.
    /// </summary>
    private static Point[] LoadSide(Evidence evidence, NetlistDevice isolator)
    {
        var without = evidence.Network.Without(isolator.Isolates!.Elements);
        var poles = isolator.Isolates.Elements.Select(evidence.Devices.Element).ToArray();
        var own = evidence.Netlist.Supplies.Where(s => FeedsDirectly(evidence, s, poles)).ToArray();
        return
        [
            .. evidence
                .Netlist.Points.Where(p => p.Device is not null && p.Device != isolator.Tag)
                .Where(p =>
                    own.Any(s =>
                        evidence.Table.Meet(evidence.Settled, evidence.Network.LiveFrom(p.Net, s.Name))
                        && !evidence.Table.Meet(evidence.Settled, without.LiveFrom(p.Net, s.Name))
                    )
                ),
        ];
    }

    private static bool FeedsDirectly(Evidence evidence, Supply supply, IReadOnlyList<Element> poles)
    {
        var sections = supply
            .Conductors.SelectMany(c => evidence.Sections.All.Where(s => s.Nets.Contains(c.Net)))
            .ToArray();
        return poles.Any(e => sections.Any(s => s.Nets.Contains(e.A) || s.Nets.Contains(e.B)));
    }
}
