namespace Coldpath.Wiring.Failures;

/// <summary>
/// The failures that every panel has, whatever its kinds say of their own: coils burn open, armatures jam, controls
/// stick, control wires come off or touch earth. Searches without failures are spared them.
/// </summary>
public static class CommonFailures
{
    /// <summary>The netlist with them. Variables, elements and nets of the netlist itself keep their names.</summary>
    public static Netlist WithCommonFailures(this Netlist netlist) => With(netlist, _ => true);

    /// <summary>The names of all failures, the kinds' own and the common ones, in declared order.</summary>
    public static IReadOnlyList<string> AllFailures(this Netlist netlist) =>
        [
            .. netlist
                .WithCommonFailures()
                .Variables.Where(v => v.Kind == VariableKind.Failure)
                .Select(v => v.Name),
        ];

    /// <summary>The netlist in which just these can fail; whatever else could is as if it never did.</summary>
    public static Netlist WithFailures(this Netlist netlist, IReadOnlySet<string> failures)
    {
        var own = netlist.Variables.Where(v => v.Kind == VariableKind.Failure && !failures.Contains(v.Name));
        var never = own.Select(v => v.Name).ToHashSet();
        var pinned = netlist.AtRest(never);
        return With(
            pinned with
            {
                Variables = [.. pinned.Variables.Where(v => !never.Contains(v.Name))],
            },
            failures.Contains
        );
    }

    private static Netlist With(Netlist netlist, Func<string, bool> chosen) =>
        WireFailures.AddTo(PartFailures.AddTo(netlist, chosen), chosen);
}
