namespace Coldpath.Wiring.Failures;

/// <summary>
/// The failures that every panel has, whatever its kinds say of their own: coils burn open, armatures jam, controls
/// stick, control wires come off or touch earth. Searches without failures are spared them.
/// </summary>
public static class CommonFailures
{
    public const string No = "no";
    public const string Yes = "yes";

    /// <summary>The netlist with them. Variables, elements and nets of the netlist itself keep their names.</summary>
    public static Netlist WithCommonFailures(this Netlist netlist) =>
        WireFailures.AddTo(PartFailures.AddTo(netlist));

    internal static Variable Variable(string name, string device, FailureClass of, Expression when) =>
        new()
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Failure,
            Class = of,
            Values = [No, Yes],
            Rest = No,
            Moves = [new Move(No, Yes, Mover.Failure, when, Expression.False)],
        };

    internal static Expression Happened(string name) => new VariableIs(name, Yes);

    internal static Expression Unless(string name, Expression condition) =>
        Expression.AllOf(condition, Expression.Negate(Happened(name)));
}
