using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class SingleChannelEmergencyStop : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L411",
            Name = "single-channel-emergency-stop",
            Family = Family.ControlLogic,
            Severity = Severity.Danger,
            Title = "An emergency stop acts through one contact alone, where the panel has two channels.",
            Why =
                "A relay with two channels is bought so that one stuck contact does not matter; here it does.",
            Reference = "ISO 13849-1 (category 3); IEC 60204-1, 9.4.2.2; ISO 13850, 4.1.5",
            Remedy = "lead each channel over a contact of its own of the emergency stop",
            Limits = "only of panels with a device that looks at two channels",
            Example = new(
                "direct-on-line",
                [
                    "relay                K1    coil 120 V",
                    "rung 1  1   -> NC F2 -> S0 -> S1 -> node 11",
                    "rung 4  1   -> NO K1 -> P1 -> 2",
                ],
                [
                    "relay                K1 and K8 coil 120 V\nsafety relay         K9    120 V, reset automatic",
                    "rung 1  1   -> NC F2 -> NO K9 -> S1 -> node 11",
                    "rung 4  1   -> NO K1 -> P1 -> 2\n1 -> supply K9 -> 2\nrung 5  1   -> S0 -> coil K8 -> 2\nK9:S11 -> NO K8 -> K9:S12\nK9:S21 -> NO K8 -> K9:S22",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        if (!e.Netlist.Variables.Any(v => HasTwoChannels(e, v)))
            yield break;
        foreach (var stop in Stops.Emergency(e))
        foreach (var motor in e.Motors.Where(m => IsStopped(e.Behaviour, e, stop, m)))
        foreach (var contact in Contacts(e, stop))
        {
            var stuck = new Behaviour(Stuck(e.Netlist, contact), new DiagramTable());
            var states = Running(stuck, e, stop, motor);
            if (stuck.ShortestTo(states) is { } story)
                yield return e.Report(this, [stop.Tag, motor.Name])
                    .Says(
                        $"{stop.Tag} stops {motor.Name} by {e.ElementName(contact.Id)} alone: should that contact not open, it runs on"
                    )
                    .After(story)
                    .Finding;
        }
    }

    /// <summary>It is left when either of two pairs of terminals is not joined, and both pairs can come apart.</summary>
    private static bool HasTwoChannels(Evidence e, Variable variable) =>
        variable.Kind == VariableKind.Cell
        && variable
            .Moves.Select(m => m.When)
            .OfType<Any>()
            .Select(any => any.Terms.OfType<Not>().Select(n => n.Term).OfType<Joined>().ToArray())
            .Any(pairs =>
                pairs.Length > 1 && pairs.All(p => e.Table.Meet(e.Settled, !e.Network.Joined(p.A, p.B)))
            );

    private static IEnumerable<Element> Contacts(Evidence e, NetlistDevice stop) =>
        e.Devices.Elements(stop.Tag).Where(c => c.Type == ElementType.Contact && OpensWhenStruck(e, stop, c));

    private static bool OpensWhenStruck(Evidence e, NetlistDevice stop, Element contact) =>
        !e.Table.Meet(Stops.Operated(e, stop), e.Network.Closed(contact.Id));

    private static bool IsStopped(Behaviour behaviour, Evidence e, NetlistDevice stop, Load motor) =>
        !behaviour.Table.Meet(Running(behaviour, e, stop, motor), behaviour.Reachable);

    private static Diagram Running(Behaviour behaviour, Evidence e, NetlistDevice stop, Load motor) =>
        behaviour.Table.AllOf(
            behaviour.Quiet,
            behaviour.Network.Runs(motor.Name),
            Stops.Operated(e, behaviour, stop)
        );

    private static Netlist Stuck(Netlist netlist, Element contact) =>
        netlist with
        {
            Elements =
            [
                .. netlist.Elements.Select(e => e.Id == contact.Id ? e with { Closed = Expression.True } : e),
            ],
        };
}
