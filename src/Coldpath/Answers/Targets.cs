using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>What a name in a question stands for: a terminal or node, all terminals of a device, all in a place.</summary>
public static class Targets
{
    /// <summary>In the netlist's order; empty when nothing has the name.</summary>
    public static IReadOnlyList<Point> Find(Netlist netlist, string name)
    {
        var exact = netlist.Points.Where(p => p.Name == name).ToArray();
        if (exact.Length > 0)
            return exact;
        return [.. netlist.Points.Where(p => p.Device == name || p.Place == name)];
    }

    /// <summary>Every name that finds something.</summary>
    public static IEnumerable<string> Names(Netlist netlist) =>
        netlist.Points.SelectMany(p => new[] { p.Name, p.Device, p.Place }).OfType<string>().Distinct();
}
