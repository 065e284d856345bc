using Coldpath.Wiring;

namespace Coldpath.Devices;

/// <summary>
/// Leaves out values that a control only passes through where nothing can tell them from the position before or
/// after: a push button of which only make contacts are wired has no need of a value between released and pressed.
/// The panel's behaviour stays the same, since such a value is entered from a settled state and left at once.
/// </summary>
public static class PassingPositions
{
    public static Netlist LeaveOut(Netlist netlist)
    {
        var conditions = ConditionsOf(netlist).ToLookup(c => c.Variable, c => c.Condition);
        var named = OperationsOf(netlist).ToHashSet();
        var kept = netlist
            .Variables.Select(v =>
                v.Values.Aggregate(v, (left, value) => Without(left, value, conditions[v.Name], named))
            )
            .ToList();
        if (kept.SequenceEqual(netlist.Variables, ReferenceEqualityComparer.Instance))
            return netlist;
        var values = kept.ToDictionary(v => v.Name, v => v.Values);
        return (netlist with { Variables = kept }).WithConditions(condition =>
            Conditions.Replaced(condition, atom => values[atom.Variable].Contains(atom.Value) ? null : false)
        );
    }

    private static Variable Without(
        Variable variable,
        string value,
        IEnumerable<Expression> conditions,
        HashSet<Operation> named
    )
    {
        if (
            variable.Rest == value
            || named.Contains(new Operation(variable.Name, value))
            || Exit(variable, value) is not { } exit
            || Entry(variable, value) is not { } entry
            || !(
                IsAlike(variable.Name, value, entry.From, conditions)
                || IsAlike(variable.Name, value, exit.To, conditions)
            )
        )
            return variable;
        return variable with
        {
            Values = [.. variable.Values.Where(v => v != value)],
            Moves =
            [
                .. variable.Moves.Where(m => m != exit).Select(m => m == entry ? m with { To = exit.To } : m),
            ],
        };
    }

    /// <summary>The one way out of a value, taken by itself whatever holds.</summary>
    private static Move? Exit(Variable variable, string value) =>
        variable.Moves.Where(m => m.From == value).ToList()
            is [{ By: Mover.Settle, When: Constant { Value: true } } exit]
            ? exit
            : null;

    /// <summary>The one way in, made from a settled state.</summary>
    private static Move? Entry(Variable variable, string value) =>
        variable.Moves.Where(m => m.To == value).ToList() is [{ By: Mover.Operator or Mover.Process } entry]
            ? entry
            : null;

    private static bool IsAlike(string variable, string a, string b, IEnumerable<Expression> conditions) =>
        conditions.All(c => At(c, variable, a) == At(c, variable, b));

    /// <summary>The condition with the variable at a value.</summary>
    private static Expression At(Expression condition, string variable, string value) =>
        condition switch
        {
            VariableIs v when v.Variable == variable => v.Value == value ? Expression.True : Expression.False,
            Not not => Expression.Negate(At(not.Term, variable, value)),
            All all => Expression.AllOf(all.Terms.Select(t => At(t, variable, value)).ToList()),
            Any any => Expression.AnyOf(any.Terms.Select(t => At(t, variable, value)).ToList()),
            _ => condition,
        };

    /// <summary>Every condition of the netlist once for each variable in it.</summary>
    private static IEnumerable<(string Variable, Expression Condition)> ConditionsOf(Netlist netlist)
    {
        var supplies = netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output)).ToList();
        return netlist
            .Elements.SelectMany(e => new[] { e.Closed, e.Leaks })
            .Concat(supplies.SelectMany(s => s.Conductors.Select(c => c.Present).Prepend(s.Present)))
            .Concat(netlist.Converters.Select(c => c.When))
            .Concat(netlist.Variables.SelectMany(v => v.Moves).SelectMany(m => new[] { m.When, m.May }))
            .Concat(netlist.Constraints.Select(c => c.Holds))
            .Concat(netlist.Intents.Select(i => i.When))
            .OfType<Expression>()
            .Distinct<Expression>(ReferenceEqualityComparer.Instance)
            .SelectMany(c => VariablesIn(c).Distinct().Select(v => (v, c)));
    }

    private static IEnumerable<Operation> OperationsOf(Netlist netlist) =>
        netlist
            .Powered.Concat(netlist.Intents.SelectMany(i => i.By))
            .Concat(
                netlist.Devices.SelectMany(d => d.OpensOnShort).Select(o => new Operation(o.Variable, o.To))
            );

    private static IEnumerable<string> VariablesIn(Expression condition) =>
        condition switch
        {
            VariableIs v => [v.Variable],
            Not not => VariablesIn(not.Term),
            All all => all.Terms.SelectMany(VariablesIn),
            Any any => any.Terms.SelectMany(VariablesIn),
            _ => [],
        };
}
