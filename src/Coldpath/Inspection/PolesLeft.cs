using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A device that is off and leaves a conductor through to a load that cannot run without it.</summary>
public sealed record PoleLeft(string Device, Load Motor, Diagram States);

/// <summary>Finds devices with fewer switched poles than the load has unearthed conductors.</summary>
public static class PolesLeftClosed
{
    /// <summary>
    /// Isolators without which the load would not run, and past which a terminal of it is solidly live in a state in
    /// which it runs.
    /// </summary>
    public static IEnumerable<PoleLeft> ByIsolators(Evidence evidence) =>
        from isolator in evidence.Devices.Isolators
        let without = evidence.Network.Without(isolator.Isolates!.Elements)
        from motor in evidence.Motors
        let states = evidence.Table.AllOf(
            evidence.Settled,
            evidence.Runs(motor),
            !without.Runs(motor.Name),
            SolidlyLive(without, motor)
        )
        where !states.IsFalse
        select new PoleLeft(isolator.Tag, motor, states);

    /// <summary>
    /// Controllers that are off with nothing about to change, while a terminal of the load is solidly live and closing
    /// them would make it run.
    /// </summary>
    public static IEnumerable<PoleLeft> ByControllers(Evidence evidence) =>
        from controller in evidence.Devices.Controllers
        from motor in evidence.Motors
        let off = evidence.Table.AllOf(
            evidence.Quiet,
            evidence.Intact,
            !evidence.Devices.AnyClosed(controller),
            !evidence.Runs(motor),
            SolidlyLive(evidence.Network, motor)
        )
        where !off.IsFalse
        let running = evidence.Table.And(off, Closing(evidence, controller).Runs(motor.Name))
        where evidence.Behaviour.IsSurelyReached(running)
        let states = evidence.Table.And(running, evidence.Behaviour.SurelyReachable)
        select new PoleLeft(controller, motor, states);

    private static Network Closing(Evidence evidence, string controller)
    {
        var poles = evidence.Devices.Poles(controller).Select(e => e.Id).ToHashSet();
        return new(
            evidence.Netlist with
            {
                Elements =
                [
                    .. evidence.Netlist.Elements.Select(e =>
                        poles.Contains(e.Id) ? e with { Closed = Expression.True } : e
                    ),
                ],
            },
            evidence.Behaviour.Space
        );
    }

    private static Diagram SolidlyLive(Network network, Load motor) =>
        network.States.Table.AnyOf(motor.Terminals.Select(net => network.Live(net, LiveBy.Solid)));
}
