using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Whether a load starts again by itself when something that had stopped it goes back: power that returns, a trip that
/// resets itself. Nobody gives a command in between. Only certain moves are followed.
/// </summary>
public sealed class Restarting(Behaviour behaviour)
{
    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    /// <param name="running">States in which the load runs; no momentary control is held in any that counts.</param>
    /// <param name="variable">What stops it and goes back: its number.</param>
    /// <param name="among">Its moves that count.</param>
    /// <returns>The states in which the load runs again, and the story; null when it does not.</returns>
    public (Diagram States, Story Story)? Of(Diagram running, int variable, Func<Transition, bool> among)
    {
        var rest = Space.Is(variable, Space.Rest[variable]);
        var fromRest = behaviour.FromRest(uncertainToo: false);
        var before = Table.AllOf(fromRest.All, behaviour.Quiet, running, rest, LetGo());
        var leaving = Phase(before, t => t.Variable == variable && t.To != Space.Rest[variable] && among(t));
        var stopped = Table.AllOf([leaving.All, behaviour.Quiet, !rest, !running, .. Empty()]);
        var returning = Phase(
            stopped,
            t => t.Variable == variable && t.To == Space.Rest[variable] && among(t)
        );
        var again = Table.AllOf(returning.All, behaviour.Quiet, running, rest);
        if (again.IsFalse)
            return null;
        return (again, Phases.Story(behaviour, throughUncertain: false, again, fromRest, leaving, returning));
    }

    /// <summary>Every store is empty: what it held in has had time to drop.</summary>
    private IEnumerable<Diagram> Empty() =>
        behaviour
            .Netlist.Supplies.Concat(behaviour.Netlist.Converters.Select(c => c.Output))
            .Select(s => s.Store?.Variable)
            .OfType<string>()
            .Select(Space.IndexOf)
            .Select(v => Space.Is(v, Space.Rest[v]));

    private Diagram LetGo() =>
        Table.AllOf(
            Space
                .Variables.Index()
                .Where(v => v.Item.Momentary)
                .Select(v => Space.Is(v.Index, Space.Rest[v.Index]))
        );

    private Reach Phase(Diagram start, Func<Transition, bool> made) =>
        behaviour.ReachFrom(
            start,
            uncertainToo: false,
            t => t.IsUrgent || t.Cause is Cause.Delay or Cause.Condition || made(t)
        );
}
