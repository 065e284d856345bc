namespace Coldpath.Wiring.Failures;

/// <summary>
/// Parts that no longer move: an open coil, an armature that stays in, a control that stays pressed, a contact of the
/// process that hangs, a trip or a breaker that does not trip, a timer that does not run out.
/// </summary>
internal sealed class PartFailures
{
    private readonly Netlist netlist;
    private readonly Func<string, bool> chosen;
    private readonly HashSet<string> elsewhere;

    /// <summary>For a coil's element the failure that opens it.</summary>
    private readonly Dictionary<string, string> open = [];

    private PartFailures(Netlist netlist, Func<string, bool> chosen)
    {
        this.netlist = netlist;
        this.chosen = chosen;
        elsewhere = netlist.DevicesElsewhere();
    }

    /// <param name="netlist">The panel.</param>
    /// <param name="chosen">The names of the failures that are wanted.</param>
    public static Netlist AddTo(Netlist netlist, Func<string, bool> chosen)
    {
        var failures = new PartFailures(netlist, chosen);
        var variables = netlist.Variables.SelectMany(failures.Failing).ToArray();
        return netlist with
        {
            Variables = variables,
            Elements = [.. netlist.Elements.Select(failures.Opened)],
        };
    }

    private Element Opened(Element element) =>
        open.TryGetValue(element.Id, out var failure)
            ? element with
            {
                Closed = FailureVariable.Unless(failure, element.Closed),
            }
            : element;

    /// <summary>The variable, its moves hindered, and behind it the failures that hinder them.</summary>
    private IEnumerable<Variable> Failing(Variable variable) =>
        variable switch
        {
            _ when elsewhere.Contains(variable.Device) => [variable],
            { Kind: VariableKind.Armature, Coil.Count: 2 } => Armature(variable),
            { Kind: VariableKind.Position, Momentary: true } => Sticking(
                variable,
                AwayFromRest(variable),
                move => move.To == variable.Rest || move.From != variable.Rest
            ),
            { Kind: VariableKind.Process } when netlist.Elements.Any(e => IsMovedBy(e, variable)) => Sticking(
                variable,
                Expression.True,
                _ => true
            ),
            { Kind: VariableKind.Trip } => Sticking(
                variable,
                Expression.True,
                move => IsByItself(move) && move.From == variable.Rest
            ),
            { Kind: VariableKind.Position } when variable.Moves.Any(m => Trips(variable, m)) => Sticking(
                variable,
                Expression.True,
                move => Trips(variable, move)
            ),
            { Kind: VariableKind.Timer } => Sticking(
                variable,
                Expression.True,
                move => move.By == Mover.Delay
            ),
            _ => [variable],
        };

    private static bool IsByItself(Move move) => move.By is Mover.Trip or Mover.Settle;

    /// <summary>It leaves by itself what a hand could leave too; a selector between two positions only goes on.</summary>
    private static bool Trips(Variable position, Move move) =>
        IsByItself(move) && position.Moves.Any(m => m.From == move.From && m.By == Mover.Operator);

    private Variable[] Sticking(Variable variable, Expression when, Func<Move, bool> hindered)
    {
        var name = $"{variable.Name}.sticks";
        if (!chosen(name))
            return [variable];
        return
        [
            variable with
            {
                Moves = [.. variable.Moves.Select(m => hindered(m) ? Unless(name, m) : m)],
            },
            FailureVariable.Of(name, variable.Device, FailureClass.Control, when),
        ];
    }

    private IEnumerable<Variable> Armature(Variable armature)
    {
        var (burnt, jammed) = ($"{armature.Name}.open", $"{armature.Name}.jams");
        var failures = new List<Variable>();
        if (chosen(burnt))
        {
            foreach (var coil in netlist.Elements.Where(e => IsCoil(e, armature)))
                open.TryAdd(coil.Id, burnt);
            armature = armature with
            {
                Moves = [.. armature.Moves.Select(m => Dropping(armature, burnt, m))],
            };
            failures.Add(FailureVariable.Of(burnt, armature.Device, FailureClass.Coil, Expression.True));
        }
        if (chosen(jammed))
        {
            var moves = armature.Moves.Select(m => m.From == armature.Rest ? m : Unless(jammed, m));
            armature = armature with { Moves = [.. moves] };
            failures.Add(
                FailureVariable.Of(jammed, armature.Device, FailureClass.Contact, AwayFromRest(armature))
            );
        }
        return [armature, .. failures];
    }

    /// <summary>Without its coil the armature does not pull, and drops whatever the voltage.</summary>
    private static Move Dropping(Variable armature, string burnt, Move move) =>
        move.To != armature.Rest
            ? Unless(burnt, move)
            : move with
            {
                When = Expression.AnyOf(move.When, FailureVariable.Happened(burnt)),
            };

    private static bool IsMovedBy(Element element, Variable variable) =>
        element.Device == variable.Device && Guards.Variables(element.Closed).Contains(variable.Name);

    private static bool IsCoil(Element element, Variable armature) =>
        element.Type == ElementType.Load
        && element.Device == armature.Device
        && (
            (element.A, element.B) == (armature.Coil[0], armature.Coil[1])
            || (element.B, element.A) == (armature.Coil[0], armature.Coil[1])
        );

    private static Expression AwayFromRest(Variable variable) =>
        Expression.Negate(new VariableIs(variable.Name, variable.Rest));

    private static Move Unless(string failure, Move move) =>
        move with
        {
            When = FailureVariable.Unless(failure, move.When),
            May = FailureVariable.Unless(failure, move.May),
        };
}
