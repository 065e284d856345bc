using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>
/// What an untraced wire may bring: a supply of its own, in step with no other, of one unearthed conductor, which may
/// come and go and which may be too weak to operate any protection.
/// </summary>
internal sealed class UntracedFlattening(Panel panel)
{
    private const string Present = "present";
    private const string Absent = "absent";

    /// <summary>What it has to earth is not known; taken as the panel's own.</summary>
    private double Volts => (panel.System.Voltage ?? 0) / (panel.System.Phases == 3 ? Math.Sqrt(3) : 1);

    public IEnumerable<Supply> Supplies() =>
        panel.Untraced.Select(u => new Supply
        {
            Name = NameOf(u),
            Group = NameOf(u),
            Limited = true,
            Present = new VariableIs(NameOf(u), Present),
            Conductors = [new SupplyConductor("L", u.Net, Volts, 0, Polarity.Alternating, Expression.True)],
        });

    public IEnumerable<Variable> Variables() =>
        panel.Untraced.Select(u => new Variable
        {
            Name = NameOf(u),
            Device = u.Device,
            Kind = VariableKind.Supply,
            Values = [Absent, Present],
            Rest = Present,
            Moves =
            [
                new Move(Absent, Present, Mover.Process, Expression.True, Expression.False),
                new Move(Present, Absent, Mover.Process, Expression.True, Expression.False),
            ],
        });

    private static string NameOf(UntracedPoint untraced) => $"untraced {untraced.Point}";
}
