using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What a hand can still open when a stop no longer works: the device that surely stops the motor.</summary>
internal static class NextStop
{
    /// <summary>The first device, as declared, whose opening stops the motor in all of the states; null when none does.</summary>
    public static NetlistDevice? Of(Evidence e, Load motor, FailureSet set)
    {
        var behaviour = set.Behaviour;
        var discharged = Discharged(e, behaviour, set.States);
        return e.Devices.All.Where(d => OpensByHand(e, d)).FirstOrDefault(Stops);

        bool Stops(NetlistDevice device)
        {
            var poles = e.Devices.Poles(device.Tag).Select(p => p.Id);
            var without = behaviour.Network.Without(poles);
            return !behaviour.Table.Meet(discharged, without.Runs(motor.Name));
        }
    }

    /// <summary>The same with every store empty: what it holds runs out by itself.</summary>
    private static Diagram Discharged(Evidence e, Behaviour behaviour, Diagram states)
    {
        var space = behaviour.Space;
        foreach (var store in e.Stores.Select(s => space.IndexOf(s.Store!.Variable)))
            states = space.Assign(states, store, space.Rest[store]);
        return states;
    }

    /// <summary>A switch or breaker with main poles; a contactor is opened by what has just failed to.</summary>
    private static bool OpensByHand(Evidence e, NetlistDevice device) =>
        e.Devices.Poles(device.Tag).Any()
        && !e.Devices.IsController(device.Tag)
        && e.Devices.Variables(device.Tag)
            .Any(v => v.Kind == VariableKind.Position && v.Moves.Any(m => m.By == Mover.Operator));
}
