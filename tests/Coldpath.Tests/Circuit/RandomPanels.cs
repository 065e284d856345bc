using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>
/// Small panels at random: a supply, an isolator, protection, contactors with control circuits, motors, and whatever
/// else the budget of assignments affords; then, as often as not, some miswiring. Enough of them show everything the
/// engine must get right (see the coverage that the comparison asserts).
/// </summary>
internal sealed partial class RandomPanels
{
    private readonly PanelSketch sketch;
    private readonly List<string[]> buses = [];
    private readonly List<Contactor> contactors = [];
    private readonly List<Expression> permits = [];

    private RandomPanels(System.Random dice, int mostAssignments) => sketch = new(dice, mostAssignments);

    /// <summary>The panel of this number: always the same.</summary>
    public static Netlist Panel(int number, int mostAssignments = 256)
    {
        var panels = new RandomPanels(new System.Random(number), mostAssignments);
        panels.Build();
        return panels.sketch.Netlist($"R{number}");
    }

    private void Build()
    {
        var bus = Protected(Isolated(MainSupply(), "Q"));
        buses.Add(bus);
        var control = ControlSupply(bus);
        var plan = sketch.Pick(
            Plan.Direct,
            Plan.Direct,
            Plan.Reversing,
            Plan.TwoWays,
            Plan.Staged,
            Plan.Drive
        );
        if (sketch.Chance(0.2))
            SecondSupply(bus);
        if (sketch.Chance(0.35))
            Overload();
        if (sketch.Chance(0.3))
            Selector();
        Starter(plan, bus, control);
        Extras(control);
        if (sketch.Chance(0.5))
            Mischief();
    }

    private enum Plan
    {
        Direct,
        Reversing,
        TwoWays,
        Staged,
        Drive,
    }

    /// <summary>The two nets a control circuit is fed by, and its voltage.</summary>
    private sealed record Control(string Hot, string Return, double Volts);

    private sealed record Contactor(string Name)
    {
        public Expression In => PanelSketch.Is(Name, "in");
        public Expression Out => PanelSketch.Is(Name, "out");
    }
}
