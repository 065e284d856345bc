using Coldpath.Wiring;

namespace Coldpath.Devices;

/// <summary>A failure as a variable: it has happened or not, and never heals.</summary>
internal static class FailureVariable
{
    public const string No = "no";
    public const string Yes = "yes";

    public static Variable Of(string name, FailureClass failure, Expression when) =>
        new()
        {
            Name = name,
            Device = "",
            Kind = VariableKind.Failure,
            Class = failure,
            Values = [No, Yes],
            Rest = No,
            Moves = [new Move(No, Yes, Mover.Failure, when, Expression.False)],
        };
}
