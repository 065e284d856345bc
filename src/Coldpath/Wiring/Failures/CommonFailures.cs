namespace Coldpath.Wiring.Failures;

/// <summary>
/// The failures that every panel has, whatever its kinds say of their own: coils burn open, armatures jam, controls
/// stick, contacts do not make, whatever else conducts opens, control wires come off or touch earth. Searches without
/// failures are spared them.
/// </summary>
public static class CommonFailures
{
    /// <summary>The netlist with them. Variables, elements and nets of the netlist itself keep their names.</summary>
    public static Netlist WithCommonFailures(this Netlist netlist) => With(netlist, _ => true);

    /// <summary>
    /// The names of all failures that differ, the kinds' own and the common ones, in declared order: where a contact
    /// that does not make is no other circuit than its wire off, the wire stands for both.
    /// </summary>
    public static IReadOnlyList<string> AllFailures(this Netlist netlist) =>
        [.. netlist.DifferentFailures().Select(f => f.Variable.Name)];

    /// <summary>The names of all failures, also of those that another stands for.</summary>
    public static IReadOnlyList<string> NamedFailures(this Netlist netlist) =>
        [.. FailuresOf(netlist.WithCommonFailures()).Select(v => v.Name)];

    /// <summary>All failures that differ and their sorts, in declared order.</summary>
    internal static IEnumerable<(Variable Variable, FailureSort Sort)> DifferentFailures(this Netlist netlist)
    {
        var whole = netlist.WithCommonFailures();
        var sorts = new FailureSorts(whole);
        var repeated = RepeatedFailures.Of(netlist);
        return [.. FailuresOf(whole).Where(v => !repeated.ContainsKey(v.Name)).Select(v => (v, sorts.Of(v)))];
    }

    private static IEnumerable<Variable> FailuresOf(Netlist netlist) =>
        netlist.Variables.Where(v => v.Kind == VariableKind.Failure);

    /// <summary>The netlist in which just these can fail; whatever else could is as if it never did.</summary>
    public static Netlist WithFailures(this Netlist netlist, IReadOnlySet<string> failures)
    {
        var own = netlist.Variables.Where(v => v.Kind == VariableKind.Failure && !failures.Contains(v.Name));
        var never = own.Select(v => v.Name).ToHashSet();
        var pinned = netlist.AtRest(never);
        return With(
            (
                pinned with
                {
                    Variables = [.. pinned.Variables.Where(v => !never.Contains(v.Name))],
                }
            ).WithoutIdleElsewhere(),
            failures.Contains
        );
    }

    private static Netlist With(Netlist netlist, Func<string, bool> chosen) =>
        WireFailures.AddTo(OpenFailures.AddTo(PartFailures.AddTo(netlist, chosen), netlist, chosen), chosen);
}
