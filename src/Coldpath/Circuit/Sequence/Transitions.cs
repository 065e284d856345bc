using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>Compiles the declared moves, and those of short-circuit devices, to transitions in declared order.</summary>
internal sealed class Transitions(Network network, Constraints constraints, ShortCircuits shorts)
{
    private readonly StateSpace space = network.States;

    private DiagramTable Table => space.Table;

    public IReadOnlyList<Transition> Of(Netlist netlist)
    {
        var declared = netlist.Variables.SelectMany((v, i) => v.Moves.Select(m => Compile(v, i, m)));
        return [.. declared.Concat(shorts.Openings).Where(t => t.From != t.To).OrderBy(t => t.Variable)];
    }

    private Transition Compile(Variable variable, int index, Move move)
    {
        var from = space.IndexOfValue(variable.Name, move.From);
        var to = space.IndexOfValue(variable.Name, move.To);
        var (certain, uncertain, shorted) = Conditions(variable, move);
        var here = Table.And(space.Domain, space.Is(index, from));
        var allowed = Table.And(here, constraints.Allow(index, to));
        return new Transition(index, from, to, CauseOf(move.By))
        {
            Certain = Table.And(certain, allowed),
            Uncertain = Table.And(uncertain, allowed),
            Shorted = Table.And(shorted, allowed),
            Blocked = WantsInVain(variable, move)
                ? Table.Except(Table.And(certain, here), allowed)
                : Diagram.False,
        };
    }

    private static bool WantsInVain(Variable variable, Move move) =>
        variable.Kind == VariableKind.Armature && move.By == Mover.Settle;

    private (Diagram Certain, Diagram Uncertain, Diagram Shorted) Conditions(Variable variable, Move move)
    {
        var when = network.Of(move.When);
        var may = Table.Except(network.Of(move.May), when);
        if (shorts.Shorted.IsFalse || !(IsDrop(variable, move) || IsPull(variable, move)))
            return (when, may, Diagram.False);
        var whenLost = shorts.AfterCollapse(move.When);
        var mayLost = shorts.AfterCollapse(move.May);
        return IsDrop(variable, move)
            ? Drop(when, may, whenLost, mayLost)
            : Pull(when, may, whenLost, mayLost);
    }

    /// <summary>Whatever falls back by itself; a control springs back whether there is voltage or not.</summary>
    private static bool IsDrop(Variable variable, Move move) =>
        move.By == Mover.Settle && move.To == variable.Rest && variable.Kind != VariableKind.Position;

    private static bool IsPull(Variable variable, Move move) =>
        move.By == Mover.Settle && move.To != variable.Rest && variable.Kind == VariableKind.Armature;

    /// <summary>A drop that the collapse would cause may come before the device opens, or not.</summary>
    private (Diagram, Diagram, Diagram) Drop(Diagram when, Diagram may, Diagram whenLost, Diagram mayLost)
    {
        var shorted = Table.And(shorts.Shorted, Table.Except(whenLost, when));
        var uncertain = Table.Or(may, Table.Except(Table.And(shorts.Shorted, mayLost), when));
        return (when, Table.Except(uncertain, shorted), shorted);
    }

    /// <summary>
    /// What only the shorted supply would pull in stays out while a device is sure to clear the short; with no such
    /// device the voltage may hold up, and it may pull in.
    /// </summary>
    private (Diagram, Diagram, Diagram) Pull(Diagram when, Diagram may, Diagram whenLost, Diagram mayLost)
    {
        var certain = Table.Except(when, Table.Except(shorts.Shorted, whenLost));
        var shorted = Table.Except(Table.Except(when, certain), shorts.Cleared);
        var possible = Table.And(Table.Or(when, may), Table.Or(whenLost, mayLost));
        var open = Table.IfThenElse(shorts.Cleared, possible, Table.Or(when, may));
        return (certain, Table.Except(open, Table.Or(certain, shorted)), shorted);
    }

    private static Cause CauseOf(Mover mover) =>
        mover switch
        {
            Mover.Operator => Cause.Operator,
            Mover.Process => Cause.Process,
            Mover.Settle => Cause.Settle,
            Mover.Delay => Cause.Delay,
            Mover.Trip => Cause.Trip,
            Mover.Condition => Cause.Condition,
            _ => Cause.Failure,
        };
}
