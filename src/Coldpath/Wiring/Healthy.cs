namespace Coldpath.Wiring;

/// <summary>A netlist in which nothing fails.</summary>
public static class Healthy
{
    /// <summary>
    /// The netlist without its failure variables: every condition has them at rest. A search in which no failure may
    /// occur never leaves these states, and is far smaller without the variables.
    /// </summary>
    public static Netlist WithoutFailures(this Netlist netlist)
    {
        var rest = netlist
            .Variables.Where(v => v.Kind == VariableKind.Failure)
            .ToDictionary(v => v.Name, v => v.Rest);
        if (rest.Count == 0)
            return netlist;
        Expression Kept(Expression condition) => Pinned(condition, rest);
        return netlist with
        {
            Variables =
            [
                .. netlist
                    .Variables.Where(v => v.Kind != VariableKind.Failure)
                    .Select(v =>
                        v with
                        {
                            Moves = [.. v.Moves.Select(m => m with { When = Kept(m.When), May = Kept(m.May) })],
                        }
                    ),
            ],
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    e with
                    {
                        Closed = Kept(e.Closed),
                        Leaks = e.Leaks is { } leaks ? Kept(leaks) : null,
                    }
                ),
            ],
            Supplies = [.. netlist.Supplies.Select(s => Of(s, Kept))],
            Converters =
            [
                .. netlist.Converters.Select(c => c with { When = Kept(c.When), Output = Of(c.Output, Kept) }),
            ],
            Constraints = [.. netlist.Constraints.Select(c => c with { Holds = Kept(c.Holds) })],
            Devices =
            [
                .. netlist.Devices.Select(d =>
                    d with
                    {
                        States = [.. d.States.Select(s => KeyValuePair.Create(s.Key, Kept(s.Value)))],
                    }
                ),
            ],
            Intents = [.. netlist.Intents.Select(i => i with { When = Kept(i.When) })],
        };
    }

    private static Supply Of(Supply supply, Func<Expression, Expression> kept) =>
        supply with
        {
            Present = kept(supply.Present),
            Conductors = [.. supply.Conductors.Select(c => c with { Present = kept(c.Present) })],
        };

    private static Expression Pinned(Expression condition, Dictionary<string, string> rest) =>
        condition switch
        {
            VariableIs v when rest.TryGetValue(v.Variable, out var value) => new Constant(v.Value == value),
            Not n => Expression.Negate(Pinned(n.Term, rest)),
            All a => Expression.AllOf(a.Terms.Select(t => Pinned(t, rest))),
            Any a => Expression.AnyOf(a.Terms.Select(t => Pinned(t, rest))),
            _ => condition,
        };
}
