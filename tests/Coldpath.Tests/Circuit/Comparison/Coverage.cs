using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>How many of the compared panels show what, in states that they can reach.</summary>
internal sealed class Coverage
{
    /// <summary>What must be seen, and in how many panels of a hundred at least.</summary>
    private static readonly (string Feature, int Percent, Func<Behaviour, bool> Shows)[] Features =
    [
        (
            "a coil that moves",
            10,
            p => Moves(p, t => t.Cause == Cause.Settle && KindOf(p, t) == VariableKind.Armature)
        ),
        ("a short", 10, p => Reached(p, p.Shorted)),
        ("an earth-tied net that is opened", 10, Opens),
        (
            "an active converter",
            10,
            p => p.Netlist.Converters.Any(c => Reached(p, p.Network.Active(c.Output.Name)))
        ),
        ("a delay", 10, p => Moves(p, t => t.Cause == Cause.Delay)),
        ("a motor that runs", 10, p => Runs(p, Turning.Any)),
        ("a race", 3, p => Reached(p, p.Settling.Race)),
        ("a chatter", 3, p => Reached(p, p.Settling.Chatter)),
        ("a blocked coil", 3, p => p.Transitions.Any(t => Reached(p, t.Blocked))),
        ("a trip", 3, p => Moves(p, t => t.Cause == Cause.Trip)),
        ("a reversed direction", 3, p => Runs(p, Turning.Forward) && Runs(p, Turning.Reverse)),
        ("two unsynchronised supplies", 3, Unsynchronised),
        (
            "a three-position switch",
            3,
            p => p.Netlist.Variables.Any(v => v.Values.Count(x => !x.Contains('>')) >= 3)
        ),
        ("a short that a device clears", 3, p => Moves(p, t => t.Cause == Cause.Short)),
    ];

    private readonly int[] seen = new int[Features.Length];
    private int panels;

    public void Add(Behaviour panel)
    {
        panels++;
        for (var i = 0; i < Features.Length; i++)
            if (Features[i].Shows(panel))
                seen[i]++;
    }

    /// <summary>A line for each feature.</summary>
    public IEnumerable<string> Told =>
        Features.Select((f, i) => $"{100.0 * seen[i] / panels, 5:0.0} % {f.Feature}");

    /// <summary>The features seen too seldom.</summary>
    public IEnumerable<string> Missing =>
        Features.Where((f, i) => 100 * seen[i] < f.Percent * panels).Select(f => f.Feature);

    private static bool Reached(Behaviour panel, Diagram states) => panel.Table.Meet(states, panel.Reachable);

    private static VariableKind KindOf(Behaviour panel, Transition t) =>
        panel.Netlist.Variables[t.Variable].Kind;

    private static bool Moves(Behaviour panel, Func<Transition, bool> such) =>
        panel
            .Transitions.Where(such)
            .Any(t =>
                Reached(panel, t.IsUrgent ? t.Certain : panel.Table.And(t.Certain, panel.Settling.Settled))
            );

    private static bool Runs(Behaviour panel, Turning turns) =>
        panel.Netlist.Loads.Any(l => Reached(panel, panel.Network.Runs(l.Name, turns)));

    private static bool Opens(Behaviour panel) =>
        panel.Netlist.Nets.Any(net =>
            Reached(panel, panel.Network.EarthTied(net)) && Reached(panel, !panel.Network.EarthTied(net))
        );

    private static bool Unsynchronised(Behaviour panel)
    {
        var supplies = panel
            .Netlist.Supplies.Concat(panel.Netlist.Converters.Select(c => c.Output))
            .ToArray();
        return supplies.Any(a =>
            supplies.Any(b =>
                a.Group != b.Group
                && Reached(panel, panel.Table.And(panel.Network.Active(a.Name), panel.Network.Active(b.Name)))
            )
        );
    }
}
