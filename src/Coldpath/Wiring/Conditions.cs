namespace Coldpath.Wiring;

/// <summary>A netlist with every condition in it rewritten, and the rewritings that are needed.</summary>
public static class Conditions
{
    /// <summary>Tags of the devices that stand for things in other panels.</summary>
    public static HashSet<string> DevicesElsewhere(this Netlist netlist) =>
        [.. netlist.Devices.Where(d => d.Elsewhere).Select(d => d.Tag)];

    /// <summary>
    /// The netlist without its failure variables: every condition has them at rest. A search in which no failure may
    /// occur never leaves these states, and is far smaller without the variables.
    /// </summary>
    public static Netlist WithoutFailures(this Netlist netlist)
    {
        var failures = netlist.Variables.Where(v => v.Kind == VariableKind.Failure).ToList();
        var pinned = netlist.AtRest(failures.Select(v => v.Name));
        return (
            pinned with
            {
                Variables = [.. pinned.Variables.Where(v => v.Kind != VariableKind.Failure)],
            }
        ).WithoutIdleElsewhere();
    }

    /// <summary>Without what stands for other panels and can never move or conduct.</summary>
    internal static Netlist WithoutIdleElsewhere(this Netlist netlist)
    {
        var elsewhere = netlist.DevicesElsewhere();
        var idle = netlist
            .Variables.Where(v => elsewhere.Contains(v.Device) && v.Moves.All(IsNever))
            .Select(v => v.Name)
            .ToHashSet();
        var pinned = netlist.AtRest(idle);
        return pinned with
        {
            Variables = [.. pinned.Variables.Where(v => !idle.Contains(v.Name))],
            Elements =
            [
                .. pinned.Elements.Where(e =>
                    !(elsewhere.Contains(e.Device) && e.Closed is Constant { Value: false })
                ),
            ],
        };
    }

    private static bool IsNever(Move move) =>
        move is { When: Constant { Value: false }, May: Constant { Value: false } };

    /// <summary>The netlist as if every stored source were empty: nothing charged, nothing turning.</summary>
    public static Netlist WithoutStores(this Netlist netlist) =>
        netlist.AtRest(
            netlist
                .Supplies.Concat(netlist.Converters.Select(c => c.Output))
                .Select(s => s.Store?.Variable)
                .OfType<string>()
        );

    /// <summary>Every condition with these variables at rest; the variables themselves stay.</summary>
    public static Netlist AtRest(this Netlist netlist, IEnumerable<string> variables)
    {
        var named = variables.ToHashSet();
        return netlist.At(
            netlist.Variables.Where(v => named.Contains(v.Name)).ToDictionary(v => v.Name, v => v.Rest)
        );
    }

    /// <summary>Every condition with variables at these values; the variables themselves stay.</summary>
    public static Netlist At(this Netlist netlist, IReadOnlyDictionary<string, string> values) =>
        values.Count == 0
            ? netlist
            : netlist.WithConditions(condition =>
                Replaced(
                    condition,
                    atom => values.TryGetValue(atom.Variable, out var value) ? atom.Value == value : null
                )
            );

    /// <summary>A condition in which some atoms are decided: true, false, or null for those that stay.</summary>
    public static Expression Replaced(Expression condition, Func<VariableIs, bool?> decide) =>
        condition switch
        {
            VariableIs atom => decide(atom) is { } value ? new Constant(value) : atom,
            Not n => Expression.Negate(Replaced(n.Term, decide)),
            All a => Expression.AllOf(a.Terms.Select(t => Replaced(t, decide))),
            Any a => Expression.AnyOf(a.Terms.Select(t => Replaced(t, decide))),
            _ => condition,
        };

    /// <summary>The netlist with every condition in it rewritten.</summary>
    public static Netlist WithConditions(this Netlist netlist, Func<Expression, Expression> rewrite)
    {
        return netlist with
        {
            Variables = [.. netlist.Variables.Select(v => v with { Moves = [.. v.Moves.Select(Rewritten)] })],
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    e with
                    {
                        Closed = rewrite(e.Closed),
                        Leaks = e.Leaks is { } leaks ? rewrite(leaks) : null,
                        Burdens = [.. e.Burdens.Select(b => b with { When = rewrite(b.When) })],
                    }
                ),
            ],
            Supplies = [.. netlist.Supplies.Select(s => Of(s, rewrite))],
            Converters =
            [
                .. netlist.Converters.Select(c =>
                    c with
                    {
                        When = rewrite(c.When),
                        Output = Of(c.Output, rewrite),
                    }
                ),
            ],
            Constraints = [.. netlist.Constraints.Select(c => c with { Holds = rewrite(c.Holds) })],
            Devices =
            [
                .. netlist.Devices.Select(d =>
                    d with
                    {
                        States = [.. d.States.Select(s => KeyValuePair.Create(s.Key, rewrite(s.Value)))],
                    }
                ),
            ],
            Intents = [.. netlist.Intents.Select(i => i with { When = rewrite(i.When) })],
        };

        Move Rewritten(Move move) => move with { When = rewrite(move.When), May = rewrite(move.May) };
    }

    private static Supply Of(Supply supply, Func<Expression, Expression> rewrite) =>
        supply with
        {
            Present = rewrite(supply.Present),
            Conductors = [.. supply.Conductors.Select(c => c with { Present = rewrite(c.Present) })],
        };
}
