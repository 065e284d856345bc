using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A contact or fuse that opens an earthed conductor and no unearthed one with it.</summary>
/// <param name="Device">Its device.</param>
/// <param name="Element">Which.</param>
/// <param name="Conductor">The conductor, "T1 X2".</param>
/// <param name="ByTripOnly">Only an overload's or a monitor's trip opens it.</param>
/// <param name="States">Settled states in which it carries that conductor on.</param>
public sealed record EarthedBreak(
    string Device,
    string Element,
    string Conductor,
    bool ByTripOnly,
    Diagram States
);

/// <summary>Finds earthed conductors that are switched or fused alone.</summary>
public sealed class EarthedConductors
{
    private readonly Evidence evidence;
    private readonly string[] bonds;
    private readonly Network apart;
    private readonly Dictionary<string, Network> without = [];

    private EarthedConductors(Evidence evidence)
    {
        this.evidence = evidence;
        bonds = [.. Bonds(evidence)];
        apart = evidence.Network.Without(bonds);
    }

    public static IEnumerable<EarthedBreak> Breaks(Evidence evidence) =>
        new EarthedConductors(evidence).Breaks();

    private IEnumerable<EarthedBreak> Breaks() =>
        from element in evidence.Netlist.Elements
        where Opens(evidence, element)
        from supply in evidence.Supplies
        from conductor in supply.Conductors
        let states = Passing(supply, conductor, element)
        where !states.IsFalse && !OpensLiveToo(evidence, element)
        select new EarthedBreak(
            element.Device,
            element.Id,
            $"{supply.Name} {conductor.Name}",
            ByTripOnly(evidence, element),
            states
        );

    private static bool Opens(Evidence evidence, Element element) =>
        element.Type is ElementType.Contact or ElementType.Semiconductor or ElementType.Thermal
        && !Moving(evidence, element).SequenceEqual([])
        && element.A != evidence.Netlist.Earth
        && element.B != evidence.Netlist.Earth;

    /// <summary>
    /// The element hands the earthed conductor on from one side to the other: both sides have it, and one of them
    /// only through this element.
    /// </summary>
    private Diagram Passing(Supply supply, SupplyConductor conductor, Element element)
    {
        var table = evidence.Table;
        var network = evidence.Network;
        var states = table.AllOf(
            evidence.PoweredStates,
            network.Active(supply.Name),
            network.Bonded(conductor.Net),
            network.Closed(element.Id),
            apart.Joined(conductor.Net, element.A)
        );
        if (states.IsFalse)
            return states;
        var past = Without(element.Id);
        var both = table.And(past.Joined(conductor.Net, element.A), past.Joined(conductor.Net, element.B));
        return table.AllOf(states, !both, !network.AnyShort());
    }

    private Network Without(string element)
    {
        if (!without.TryGetValue(element, out var network))
        {
            network = evidence.Network.Without([.. bonds, element]);
            without.Add(element, network);
        }
        return network;
    }

    /// <summary>What is joined through the earth alone is no conductor's way.</summary>
    private static IEnumerable<string> Bonds(Evidence evidence) =>
        evidence
            .Netlist.Elements.Where(e => e.A == evidence.Netlist.Earth || e.B == evidence.Netlist.Earth)
            .Select(e => e.Id);

    /// <summary>
    /// The same variable opens the unearthed side too: another main pole, or a contact without which what hangs on this
    /// one is dead.
    /// </summary>
    private static bool OpensLiveToo(Evidence evidence, Element element)
    {
        var moving = Moving(evidence, element);
        var together = evidence
            .Devices.Elements(element.Device)
            .Where(other => other.Id != element.Id && Moving(evidence, other).Intersect(moving).Any())
            .ToArray();
        return element.Power
            ? together.Any(other => other.Power)
            : together.Any(other => FeedsAllBeyond(evidence, element, other.Id));
    }

    private static bool FeedsAllBeyond(Evidence evidence, Element element, string other)
    {
        var without = evidence.Network.Without([other]);
        var beyond = evidence
            .Netlist.Elements.Where(e => e.Type == ElementType.Load)
            .SelectMany(e =>
                e.A == element.A || e.A == element.B ? [e.B]
                : e.B == element.A || e.B == element.B ? new[] { e.A }
                : []
            );
        return !evidence.Table.Meet(evidence.Settled, evidence.Table.AnyOf(beyond.Select(without.Live)));
    }

    private static bool ByTripOnly(Evidence evidence, Element element)
    {
        var moving = Moving(evidence, element);
        return moving.All(name =>
            evidence.Netlist.Variables.First(v => v.Name == name).Kind == VariableKind.Trip
        );
    }

    /// <summary>Variables, failures left out, that its guard depends on.</summary>
    private static IEnumerable<string> Moving(Evidence evidence, Element element) =>
        Guards
            .Variables(element.Closed)
            .Where(name => evidence.Netlist.Variables.First(v => v.Name == name).Kind != VariableKind.Failure)
            .Distinct();
}
