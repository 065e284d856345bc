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
            Code = "L410",
            Name = "single-channel-emergency-stop",
            Family = Family.ControlLogic,
            Severity = Severity.Danger,
            Title = "An emergency stop acts through one contact alone, where the panel has two channels.",
            Why =
                "A relay with two channels is bought so that one stuck contact does not matter; here it does.",
            Reference = "ISO 13849-1 (category 3); IEC 60204-1, 9.4.2.2; ISO 13850, 4.1.5",
            Remedy = "lead each channel over a contact of its own of the emergency stop",
            Limits = "only of panels with a device that looks at two channels",
            Example = new("two-channels", "", ""),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        if (!e.Netlist.Variables.Any(HasTwoChannels))
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

    /// <summary>It is left when either of two pairs of terminals is not joined.</summary>
    private static bool HasTwoChannels(Variable variable) =>
        variable.Kind == VariableKind.Cell
        && variable.Moves.Any(m => m.When is Any any && any.Terms.Count(t => t is Not { Term: Joined }) > 1);

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
