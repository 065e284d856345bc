using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>What a name in a question stands for.</summary>
internal static class Terminals
{
    /// <summary>The load of that name, or those of the device of that name.</summary>
    public static IEnumerable<Load> LoadsOf(Netlist netlist, string name)
    {
        var named = netlist.Loads.Where(l => l.Name == name).ToArray();
        if (named.Length > 0)
            return named;
        var elements = netlist.Elements.Where(e => e.Device == name).Select(e => e.Id).ToHashSet();
        var owned = netlist.Loads.Where(l => l.Elements.Any(elements.Contains)).ToArray();
        return owned.Length > 0 ? owned : throw new ArgumentException($"no load {name}", nameof(name));
    }

    /// <summary>The nets of all its terminals, each once.</summary>
    public static IReadOnlyList<string> Of(Netlist netlist, string name)
    {
        var ofLoads = netlist.Loads.Where(l => l.Name == name).SelectMany(l => l.Terminals);
        var ofPoints = netlist.Points.Where(p => p.Device == name || p.Name == name).Select(p => p.Net);
        string[] nets = [.. ofLoads.Concat(ofPoints).Distinct()];
        return nets.Length > 0 ? nets : throw new ArgumentException($"no terminals of {name}", nameof(name));
    }
}
