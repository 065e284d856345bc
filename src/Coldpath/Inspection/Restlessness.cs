using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Devices that do not come to rest, or that race each other, and the states it happens in.</summary>
public sealed record Restless(IReadOnlyList<string> Devices, Diagram States);

/// <summary>Chatter and races among the reachable states.</summary>
public static class Restlessness
{
    /// <summary>More groups than this say nothing new to a reader.</summary>
    private const int Most = 8;

    /// <summary>Cycles that never settle, one for each set of devices that takes part.</summary>
    public static IEnumerable<Restless> Chatter(Evidence evidence)
    {
        var table = evidence.Table;
        // A supply that collapses and comes back while a short stands is the short's finding.
        var states = table.AllOf(
            evidence.Reachable,
            evidence.Behaviour.Settling.Chatter,
            !evidence.Behaviour.Settling.Before(evidence.Behaviour.Shorted)
        );
        for (var found = 0; found < Most && evidence.Behaviour.ShortestTo(states) is { } story; found++)
        {
            var cycle = evidence.Behaviour.Settling.After(evidence.Behaviour.Space.Of(story.End));
            var devices = Moving(evidence, cycle);
            var like = table.AllOf(
                states,
                Movers(evidence, devices),
                !Movers(evidence, Others(evidence, devices))
            );
            yield return new(devices, table.Or(like, table.And(states, cycle)));
            states = table.AllOf(states, !like, !cycle);
        }
    }

    /// <summary>Races after which a load runs or not, or turns one way or the other, as the order falls.</summary>
    public static IEnumerable<Restless> RacesThatChangeRunning(Evidence evidence)
    {
        var outcomes = evidence.Motors.SelectMany(m =>
            new[] { evidence.Runs(m), evidence.Runs(m, Turning.Forward), evidence.Runs(m, Turning.Reverse) }
        );
        var states = evidence.Table.AllOf(
            evidence.Reachable,
            evidence.Table.AnyOf(outcomes.Select(o => Differs(evidence, o))),
            !evidence.Behaviour.Settling.Before(evidence.Behaviour.Shorted),
            AtMostOneHeld(evidence),
            evidence.Intact
        );
        for (var found = 0; found < Most && evidence.Behaviour.ShortestTo(states) is { } story; found++)
        {
            var here = evidence.Behaviour.Space.Of(story.End);
            var devices = Moving(evidence, here);
            var like = evidence.Table.And(states, Movers(evidence, devices));
            if (devices.Count > 1)
                yield return new(devices, evidence.Table.Or(like, here));
            states = evidence.Table.AllOf(states, !like, !here);
        }
    }

    /// <summary>
    /// At most one start button is held: whoever presses two at once must expect that one of them wins.
    /// </summary>
    private static Diagram AtMostOneHeld(Evidence evidence)
    {
        var held = evidence
            .Netlist.Variables.Where(v => v.Momentary && evidence.Devices[v.Device].Use != ControlUse.Stop)
            .Select(v => !evidence.Is(v, v.Rest))
            .ToArray();
        var table = evidence.Table;
        var (none, one) = (Diagram.True, Diagram.False);
        foreach (var button in held)
            (none, one) = (table.Except(none, button), table.IfThenElse(button, none, one));
        return table.Or(none, one);
    }

    private static Diagram Differs(Evidence evidence, Diagram outcome)
    {
        var settling = evidence.Behaviour.Settling;
        return evidence.Table.And(
            settling.LeadingTo(outcome, evidence.Reachable),
            settling.LeadingTo(!outcome, evidence.Reachable)
        );
    }

    /// <summary>Devices with a settle move that is sure in some of the states.</summary>
    private static List<string> Moving(Evidence evidence, Diagram states) =>
        [
            .. evidence
                .Behaviour.Transitions.Where(t =>
                    t.Cause == Cause.Settle && evidence.Table.Meet(t.Certain, states)
                )
                .Select(t => evidence.Netlist.Variables[t.Variable].Device)
                .Distinct(),
        ];

    private static IEnumerable<string> Others(Evidence evidence, List<string> devices) =>
        evidence.Devices.All.Select(d => d.Tag).Except(devices);

    /// <summary>States in which one of the devices has a settle move to make.</summary>
    private static Diagram Movers(Evidence evidence, IEnumerable<string> devices)
    {
        var wanted = devices.ToHashSet();
        return evidence.Table.AnyOf(
            evidence
                .Behaviour.Transitions.Where(t => t.Cause == Cause.Settle)
                .Where(t => wanted.Contains(evidence.Netlist.Variables[t.Variable].Device))
                .Select(t => t.Certain)
        );
    }
}
