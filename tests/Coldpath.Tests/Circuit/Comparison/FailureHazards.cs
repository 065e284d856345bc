using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>What a panel shows settled only after failures.</summary>
internal sealed class FailureHazards(Behaviour behaviour)
{
    /// <summary>Where the panel stands as it can only after so many failures: that it stands so.</summary>
    public IEnumerable<Expression> Standing(int failures)
    {
        var (space, table) = (behaviour.Space, behaviour.Space.Table);
        var bits = space.Bits(space.FailureVariables);
        var few = table.And(behaviour.ReachableSettled, space.AtMostFailed(failures - 1));
        var later = table.Except(table.Exists(behaviour.ReachableSettled, bits), table.Exists(few, bits));
        if (space.First(later) is not { } state)
            yield break;
        var standing = space
            .Variables.Index()
            .Where(v => v.Item.Kind != VariableKind.Failure)
            .Select(v => new VariableIs(v.Item.Name, v.Item.Values[state[v.Index]]));
        yield return Expression.AllOf(standing);
    }

    /// <summary>Nets that become live, elements that close, loads that run with a control away from rest.</summary>
    public IEnumerable<Expression> Becoming()
    {
        var netlist = behaviour.Netlist;
        var controls = netlist.Variables.Where(v => v.Kind == VariableKind.Position);
        return netlist
            .Nets.Select(Expression (n) => new Live(n))
            .Concat(netlist.Elements.Select(e => new Closed(e.Id)))
            .Concat(
                from load in netlist.Loads
                from control in controls
                from value in control.Values
                select Expression.AllOf(new Runs(load.Name, Turning.Any), new VariableIs(control.Name, value))
            )
            .Where(OnlyByFailures);
    }

    private bool OnlyByFailures(Expression condition)
    {
        var (space, table) = (behaviour.Space, behaviour.Space.Table);
        var shown = table.And(behaviour.Of(condition), behaviour.ReachableSettled);
        return !shown.IsFalse && !table.Meet(shown, space.Failed());
    }
}
