using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Reachable shorts, sorted by the supplies and the devices that make them.</summary>
public static class ShortCircuits
{
    /// <summary>Two conductors of one supply bolted together, a fuse or breaker in the way.</summary>
    public static IEnumerable<Culprits> Within(Evidence evidence, Supply supply) =>
        CulpritSearch
            .In(
                evidence,
                evidence.Table.AllOf(
                    evidence.Reachable,
                    Inside(evidence, supply),
                    !evidence.Behaviour.UnprotectedShort
                ),
                supply.Name
            )
            .Where(c => !IsInterlockGap(evidence, c));

    /// <summary>Only an uncertain coil makes the overlap, and it is told as a missing interlock already.</summary>
    private static bool IsInterlockGap(Evidence evidence, Culprits culprits) =>
        !evidence.Behaviour.IsSurelyReached(culprits.States)
        && evidence
            .Interlocks.Gaps()
            .Any(gap => culprits.Devices.Contains(gap.First) && culprits.Devices.Contains(gap.Second));

    /// <summary>Two supplies joined so that voltages do not agree, neither shorted in itself.</summary>
    public static IEnumerable<Culprits> Between(Evidence evidence, Supply first, Supply second)
    {
        var joined = evidence.Table.AllOf(
            evidence.Reachable,
            evidence.Network.JoinedTwice(first.Name, second.Name),
            evidence.Network.Short(first.Name),
            evidence.Network.Short(second.Name),
            !evidence.Behaviour.UnprotectedShort,
            !Inside(evidence, first),
            !Inside(evidence, second)
        );
        return CulpritSearch.In(evidence, joined, first.Name);
    }

    /// <summary>Shorts that no fuse or breaker is in the way of.</summary>
    public static IEnumerable<Culprits> Unprotected(Evidence evidence) =>
        evidence.Supplies.SelectMany(s =>
            CulpritSearch.In(
                evidence,
                evidence.Table.AllOf(
                    evidence.Reachable,
                    evidence.Behaviour.UnprotectedShort,
                    evidence.Network.Short(s.Name)
                ),
                s.Name
            )
        );

    /// <summary>Every two supplies, in declared order.</summary>
    public static IEnumerable<(Supply First, Supply Second)> SupplyPairs(Evidence evidence) =>
        from a in evidence.Supplies.Index()
        from b in evidence.Supplies.Skip(a.Index + 1)
        select (a.Item, b);

    private static Diagram Inside(Evidence evidence, Supply supply)
    {
        var joins =
            from a in supply.Conductors.Index()
            from b in supply.Conductors.Skip(a.Index + 1)
            where Phasors.Between(a.Item, b) > 0
            select evidence.Table.AllOf(
                evidence.Network.Joined(a.Item.Net, b.Net),
                evidence.Of(a.Item.Present),
                evidence.Of(b.Present)
            );
        return evidence.Table.And(
            evidence.Network.Short(supply.Name),
            evidence.Table.AnyOf(joins.Concat(ThroughDiodes(evidence, supply)))
        );
    }

    /// <summary>Plus at the anode of a diode and minus at its cathode.</summary>
    private static IEnumerable<Diagram> ThroughDiodes(Evidence evidence, Supply supply) =>
        from diode in evidence.Netlist.Elements
        where diode.Type == ElementType.Diode
        from plus in supply.Conductors
        where plus.Polarity == Polarity.Plus
        from minus in supply.Conductors
        where minus.Polarity == Polarity.Minus
        select evidence.Table.AllOf(
            evidence.Network.Closed(diode.Id),
            evidence.Network.Reached(diode.A, supply.Name, plus.Name, Grade.Solid),
            evidence.Network.Reached(diode.B, supply.Name, minus.Name, Grade.Solid)
        );
}
