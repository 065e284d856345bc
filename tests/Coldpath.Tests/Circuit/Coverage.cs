using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>What a random panel shows in some state that it reaches.</summary>
internal static class Coverage
{
    /// <summary>What must be seen, with the least part of the panels that must show it.</summary>
    public static readonly IReadOnlyDictionary<string, double> Wanted = new Dictionary<string, double>
    {
        ["coil that moves"] = 0.10,
        ["short"] = 0.10,
        ["earth-tied net that is opened"] = 0.10,
        ["active converter"] = 0.10,
        ["delay"] = 0.10,
        ["motor that runs"] = 0.10,
        ["race"] = 0.03,
        ["chatter"] = 0.03,
        ["blocked coil"] = 0.03,
        ["trip"] = 0.03,
        ["reversed direction"] = 0.03,
        ["two unsynchronised supplies"] = 0.03,
        ["three-position switch"] = 0.03,
        ["short that a device clears"] = 0.03,
    };

    public static IEnumerable<string> Shown(Behaviour panel)
    {
        var (netlist, network, table) = (panel.Netlist, panel.Network, panel.Space.Table);
        bool Seen(Diagram condition) => table.Meet(condition, panel.Reachable);
        bool Moves(Func<Transition, bool> which) => panel.Transitions.Where(which).Any(t => Seen(t.Certain));
        bool IsArmature(Transition t) => netlist.Variables[t.Variable].Kind == VariableKind.Armature;

        if (Moves(t => t.Cause == Cause.Settle && IsArmature(t)))
            yield return "coil that moves";
        if (Seen(network.AnyShort()))
            yield return "short";
        if (netlist.Nets.Any(net => Seen(network.EarthTied(net)) && Seen(!network.EarthTied(net))))
            yield return "earth-tied net that is opened";
        if (netlist.Converters.Any(c => Seen(network.Active(c.Output.Name))))
            yield return "active converter";
        if (Moves(t => t.Cause == Cause.Delay))
            yield return "delay";
        if (netlist.Loads.Any(l => Seen(network.Runs(l.Name))))
            yield return "motor that runs";
        if (Seen(panel.Settling.Race))
            yield return "race";
        if (Seen(panel.Settling.Chatter))
            yield return "chatter";
        if (panel.Transitions.Any(t => Seen(t.Blocked)))
            yield return "blocked coil";
        if (Moves(t => t.Cause == Cause.Trip))
            yield return "trip";
        if (netlist.Loads.Any(Reverses))
            yield return "reversed direction";
        if (netlist.Supplies.Where(s => s.Store is null).Select(s => s.Group).Distinct().Count() > 1)
            yield return "two unsynchronised supplies";
        if (netlist.Variables.Any(v => v.Kind == VariableKind.Position && v.Values.Count(IsStop) > 2))
            yield return "three-position switch";
        if (Moves(t => t.Cause == Cause.Short))
            yield return "short that a device clears";

        bool Reverses(Load load) =>
            Seen(network.Runs(load.Name, Turning.Forward)) && Seen(network.Runs(load.Name, Turning.Reverse));
    }

    private static bool IsStop(string position) => !position.Contains('>');
}
