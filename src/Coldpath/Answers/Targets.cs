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
        var marked = netlist.Points.Where(p => IsMarked(p, name)).ToArray();
        if (marked.Length > 0)
            return marked;
        return [.. netlist.Points.Where(p => p.Device == name || p.Place == name)];
    }

    /// <summary>A terminal with several markings answers to each: "M1:U" and "M1:T1" are both "M1:U/U1/T1".</summary>
    private static bool IsMarked(Point point, string name) =>
        point.Device is { } device
        && name.StartsWith(device + ":", StringComparison.Ordinal)
        && point.Name.Length > device.Length
        && point.Name[(device.Length + 1)..].Split('/').Contains(name[(device.Length + 1)..]);

    /// <summary>Every name that finds something.</summary>
    public static IEnumerable<string> Names(Netlist netlist) =>
        netlist.Points.SelectMany(p => new[] { p.Name, p.Device, p.Place }).OfType<string>().Distinct();
}
