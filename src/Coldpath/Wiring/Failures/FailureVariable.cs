namespace Coldpath.Wiring.Failures;

/// <summary>A failure as a variable: it has happened or not, and never heals.</summary>
internal static class FailureVariable
{
    public const string No = "no";
    public const string Yes = "yes";

    /// <param name="name">In the netlist, or in a device's own names.</param>
    /// <param name="device">Whose it is; empty while that is not known.</param>
    /// <param name="failure">Its class.</param>
    /// <param name="when">Its occasion.</param>
    public static Variable Of(string name, string device, FailureClass failure, Expression when) =>
        new()
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Failure,
            Class = failure,
            Values = [No, Yes],
            Rest = No,
            Moves = [new Move(No, Yes, Mover.Failure, when, Expression.False)],
        };

    public static Expression Happened(string name) => new VariableIs(name, Yes);

    /// <summary>The condition, as long as the failure has not happened.</summary>
    public static Expression Unless(string name, Expression condition) =>
        Expression.AllOf(condition, Expression.Negate(Happened(name)));
}
