using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>An overload function: the elements it watches, the variable that trips.</summary>
public sealed record Overload(string Device, IReadOnlyList<string> Elements, string Variable);

/// <summary>Who protects what, decided by taking elements out.</summary>
public sealed class Protections(Evidence evidence)
{
    /// <summary>A charge that is left runs nothing for long, and no device ahead of it would stop it.</summary>
    private readonly Lazy<Circuit.Conduction.Network> emptied = new(() =>
        new(evidence.Netlist.WithoutStores(), evidence.Behaviour.Space)
    );

    private DiagramTable Table => evidence.Table;

    /// <summary>In declared order.</summary>
    public IReadOnlyList<Overload> Overloads { get; } =
    [
        .. from device in evidence.Netlist.Devices
        from protection in device.Protects
        where protection.Against == "overload"
        select new Overload(device.Tag, protection.Elements, protection.Variable),
    ];

    /// <summary>Elements of every fuse and breaker.</summary>
    public IReadOnlyList<string> ShortCircuitElements =>
        [.. evidence.Netlist.Devices.SelectMany(d => d.OpensOnShort).SelectMany(o => o.Elements).Distinct()];

    /// <summary>Elements of the overloads that watch this motor's current and no other's.</summary>
    public IReadOnlyList<string> OverloadElements(Load motor) =>
        [.. Overloads.Where(o => !WatchesAnother(o, motor)).SelectMany(o => o.Elements).Distinct()];

    /// <summary>Reachable settled states in which the motor would run, or be fed two phases, with the elements out.</summary>
    public Diagram FedWithout(Load motor, IReadOnlyList<string> elements)
    {
        var network = emptied.Value.Without(elements);
        var fed = Table.Or(network.Runs(motor.Name), network.SinglePhasing(motor.Name));
        return Table.AllOf(evidence.Settled, evidence.Runs(motor), fed);
    }

    /// <summary>
    /// Quiet states in which the overload has tripped and its elements go on carrying. Only its own trip is meant:
    /// it counts as ignored when it could have stopped the current.
    /// </summary>
    public Diagram IgnoredTrip(Overload overload)
    {
        var variable = evidence.Netlist.Variables.First(v => v.Name == overload.Variable);
        var tripped = Table.AnyOf(
            variable.Values.Where(v => v == "tripped").Select(v => evidence.Is(variable, v))
        );
        var carrying = Table.AnyOf(overload.Elements.Select(evidence.Network.Carries));
        return Table.AllOf(evidence.Quiet, tripped, carrying);
    }

    private bool WatchesAnother(Overload overload, Load motor)
    {
        var network = new Lazy<Circuit.Conduction.Network>(() => evidence.Network.Without(overload.Elements));
        return evidence.Motors.Any(other =>
            other.Name != motor.Name
            && !Table.AllOf(evidence.Settled, evidence.Runs(other), !network.Value.Runs(other.Name)).IsFalse
        );
    }
}
