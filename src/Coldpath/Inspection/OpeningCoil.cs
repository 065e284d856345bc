using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A coil that opens its device by being energised: a shunt trip, the reset of a latch.</summary>
/// <param name="Armature">What the coil moves.</param>
/// <param name="Position">The device's variable that it moves on.</param>
/// <param name="Closed">The value of the position that it ends.</param>
public sealed record OpeningCoil(Variable Armature, Variable Position, string Closed)
{
    public string Device => Armature.Device;

    /// <summary>Those of a panel, in declared order.</summary>
    public static IEnumerable<OpeningCoil> All(Evidence e) =>
        from armature in e.Netlist.Variables
        where armature is { Kind: VariableKind.Armature, Coil.Count: 2 }
        from position in e.Devices.Variables(armature.Device)
        where position != armature
        from move in position.Moves
        where move.By == Mover.Settle && Needs(move.When, armature) && Keeps(e, position, move)
        select new OpeningCoil(armature, position, move.From);

    /// <summary>The move is not made unless the armature has pulled in.</summary>
    private static bool Needs(Expression when, Variable armature) =>
        when switch
        {
            VariableIs v => v.Variable == armature.Name && v.Value != armature.Rest,
            All all => all.Terms.Any(t => Needs(t, armature)),
            _ => false,
        };

    /// <summary>Poles that the move opens are closed before it.</summary>
    private static bool Keeps(Evidence e, Variable position, Move move) =>
        e
            .Devices.Poles(position.Device)
            .Any(pole =>
                Closes(pole.Closed, position.Name, move.From) && !Closes(pole.Closed, position.Name, move.To)
            );

    private static bool Closes(Expression guard, string variable, string value) =>
        guard switch
        {
            VariableIs v => v.Variable == variable && v.Value == value,
            All all => all.Terms.Any(t => Closes(t, variable, value)),
            Any any => any.Terms.Any(t => Closes(t, variable, value)),
            _ => false,
        };
}
