using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>
/// Meshed networks too large to enumerate: lanes of nets with links along and across, nearly each under a variable of
/// its own, fed from one end by a bonded supply and somewhere by an unearthed one; with isolators among the links.
/// </summary>
internal static class RandomMeshes
{
    private const int Lanes = 3;

    public static Netlist Mesh(int number)
    {
        var dice = new System.Random(number);
        var sketch = new PanelSketch(dice, int.MaxValue);
        var wanted = dice.Next(30, 58);
        var lanes = sketch.NewNets(Lanes);
        Supply(sketch, "MAINS", lanes, bonded: true);
        while (sketch.Variables.Count < wanted - 6)
        {
            var next = sketch.NewNets(Lanes);
            for (var lane = 0; lane < Lanes; lane++)
                Link(sketch, lanes[lane], next[lane]);
            if (sketch.Chance(0.6))
                Link(sketch, next[0], next[dice.Next(1, Lanes)]);
            if (sketch.Chance(0.15))
                Link(sketch, next[dice.Next(Lanes)], PanelSketch.Earth);
            lanes = next;
        }
        Supply(sketch, "FOREIGN", lanes, bonded: false);
        return sketch.Netlist($"mesh {number}");
    }

    private static void Supply(PanelSketch sketch, string name, string[] nets, bool bonded)
    {
        var present = Switch(sketch, $"{name}.present", VariableKind.Supply);
        string[] conductors = [nets[0], nets[1], sketch.Net()];
        sketch.Supplies.Add(
            new()
            {
                Name = name,
                Group = name,
                Present = present,
                Conductors =
                [
                    new("L1", conductors[0], 230, 0, Polarity.Alternating, Expression.True),
                    new("L2", conductors[1], 230, -120, Polarity.Alternating, Expression.True),
                    new("N", conductors[2], 0, 0, Polarity.Alternating, Expression.True),
                ],
            }
        );
        sketch.Add(name, ElementType.Conductor, conductors[2], nets[2]);
        if (bonded)
            sketch.Add(name, ElementType.Conductor, conductors[2], PanelSketch.Earth);
    }

    private static void Link(PanelSketch sketch, string a, string b)
    {
        var type = sketch.Pick(
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Conductor,
            ElementType.Thermal,
            ElementType.Series,
            ElementType.Load,
            ElementType.Semiconductor,
            ElementType.Fault
        );
        var name = sketch.Name("S");
        Expression own = Switch(sketch, name, VariableKind.Position);
        var closed = sketch.Dice.Next(8) switch
        {
            0 => Expression.True,
            1 => Expression.Negate(own),
            2 => Expression.AllOf(own, Existing(sketch)),
            3 or 4 => Expression.AllOf(own, Switch(sketch, $"{name}.a", VariableKind.Position)),
            5 or 6 => Expression.AnyOf(own, Switch(sketch, $"{name}.b", VariableKind.Position)),
            _ => own,
        };
        var element = sketch.Add(name, type, a, b, closed);
        if (type is ElementType.Contact or ElementType.Conductor && sketch.Chance(0.85))
            sketch.Devices.Add(
                new()
                {
                    Tag = name,
                    Kind = "disconnect",
                    Isolates = new(name, [element.Id], Lockable: true, Visible: true, Rank: 1),
                }
            );
    }

    private static VariableIs Existing(PanelSketch sketch) =>
        PanelSketch.Is(sketch.Pick<Variable>(sketch.Variables).Name, "yes");

    private static VariableIs Switch(PanelSketch sketch, string name, VariableKind kind)
    {
        sketch.Variables.Add(PanelSketch.TwoValued(name, kind, "no", "yes", Mover.Operator, Mover.Operator));
        return PanelSketch.Is(name, "yes");
    }
}
