namespace Coldpath.Wiring.Failures;

/// <summary>
/// Parts that no longer move: an open coil, an armature that stays in, a control that stays pressed, a contact of the
/// process that hangs, a trip that does not trip, a timer that does not run out.
/// </summary>
internal static class PartFailures
{
    public static Netlist AddTo(Netlist netlist)
    {
        var variables = new List<Variable>();
        var open = new Dictionary<string, string>();
        foreach (var variable in netlist.Variables)
            variables.AddRange(Failing(netlist, variable, open));
        return netlist with
        {
            Variables = variables,
            Elements =
            [
                .. netlist.Elements.Select(e =>
                    open.TryGetValue(e.Id, out var failure)
                        ? e with
                        {
                            Closed = CommonFailures.Unless(failure, e.Closed),
                        }
                        : e
                ),
            ],
        };
    }

    /// <summary>The variable, its moves hindered, and behind it the failures that hinder them.</summary>
    private static IEnumerable<Variable> Failing(
        Netlist netlist,
        Variable variable,
        Dictionary<string, string> open
    ) =>
        variable switch
        {
            { Kind: VariableKind.Armature, Coil.Count: 2 } => Armature(netlist, variable, open),
            { Kind: VariableKind.Position, Momentary: true } => Sticking(
                variable,
                AwayFromRest(variable),
                move => move.To == variable.Rest || move.From != variable.Rest
            ),
            { Kind: VariableKind.Process } when netlist.Elements.Any(e => Names(e, variable)) => Sticking(
                variable,
                Expression.True,
                _ => true
            ),
            { Kind: VariableKind.Trip } => Sticking(
                variable,
                Expression.True,
                move => move.By == Mover.Trip && move.From == variable.Rest
            ),
            { Kind: VariableKind.Timer } => Sticking(
                variable,
                Expression.True,
                move => move.By == Mover.Delay
            ),
            _ => [variable],
        };

    private static bool Names(Element element, Variable variable) =>
        element.Device == variable.Device && Guards.Variables(element.Closed).Contains(variable.Name);

    private static Expression AwayFromRest(Variable variable) =>
        Expression.Negate(new VariableIs(variable.Name, variable.Rest));

    private static IEnumerable<Variable> Sticking(
        Variable variable,
        Expression when,
        Func<Move, bool> hindered
    )
    {
        var name = $"{variable.Name}.sticks";
        yield return variable with
        {
            Moves = [.. variable.Moves.Select(m => hindered(m) ? Unless(name, m) : m)],
        };
        yield return CommonFailures.Variable(name, variable.Device, FailureClass.Control, when);
    }

    private static IEnumerable<Variable> Armature(
        Netlist netlist,
        Variable armature,
        Dictionary<string, string> open
    )
    {
        var (burnt, jammed) = ($"{armature.Name}.open", $"{armature.Name}.jams");
        foreach (var coil in netlist.Elements.Where(e => IsCoil(e, armature)))
            open.TryAdd(coil.Id, burnt);
        yield return armature with
        {
            Moves = [.. armature.Moves.Select(Hindered)],
        };
        yield return CommonFailures.Variable(burnt, armature.Device, FailureClass.Coil, Expression.True);
        yield return CommonFailures.Variable(
            jammed,
            armature.Device,
            FailureClass.Contact,
            AwayFromRest(armature)
        );

        Move Hindered(Move move) =>
            move.To != armature.Rest ? Unless(burnt, move)
            : move.From == armature.Rest ? move
            : Unless(
                jammed,
                move with
                {
                    When = Expression.AnyOf(move.When, CommonFailures.Happened(burnt)),
                }
            );
    }

    private static bool IsCoil(Element element, Variable armature) =>
        element.Type == ElementType.Load
        && element.Device == armature.Device
        && (
            (element.A, element.B) == (armature.Coil[0], armature.Coil[1])
            || (element.B, element.A) == (armature.Coil[0], armature.Coil[1])
        );

    private static Move Unless(string failure, Move move) =>
        move with
        {
            When = CommonFailures.Unless(failure, move.When),
            May = CommonFailures.Unless(failure, move.May),
        };
}
