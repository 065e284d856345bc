using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A device that is off and leaves a conductor through to a load that cannot run without it.</summary>
public sealed record PoleLeft(string Device, Load Motor, Diagram States);

/// <summary>Finds devices with fewer switched poles than the load has unearthed conductors.</summary>
public static class PolesLeftClosed
{
    public static IEnumerable<PoleLeft> Of(Evidence evidence, IEnumerable<string> devices) =>
        from device in devices
        from motor in evidence.Motors
        let states = Left(evidence, device, motor)
        where !states.IsFalse
        select new PoleLeft(device, motor, states);

    /// <summary>
    /// Settled states in which every pole of the device is open, the motor does not run and would with the poles
    /// closed, and yet a terminal is solidly live.
    /// </summary>
    private static Diagram Left(Evidence evidence, string device, Load motor)
    {
        var table = evidence.Table;
        var poles = Poles(evidence, device);
        if (poles.Count == 0)
            return Diagram.False;
        var without = evidence.Network.Without(poles);
        var needed = table.AllOf(evidence.Settled, evidence.Runs(motor), !without.Runs(motor.Name));
        if (needed.IsFalse)
            return needed;
        var live = table.AnyOf(motor.Terminals.Select(net => SolidlyLive(evidence, without, net)));
        return table.And(needed, live);
    }

    private static Diagram SolidlyLive(Evidence evidence, Circuit.Conduction.Network network, string net) =>
        network.Live(net, Circuit.Conduction.LiveBy.Solid);

    private static List<string> Poles(Evidence evidence, string device) =>
        evidence.Devices[device].Isolates is { } isolates
            ? [.. isolates.Elements]
            : [.. evidence.Devices.Poles(device).Select(e => e.Id)];
}
