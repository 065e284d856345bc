using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>
/// Which supplies are synchronised. A supply's group in its blueprint is its own name, the tag of a device it is
/// synchronised with, or the name of a group.
/// </summary>
internal sealed class Groups
{
    private readonly Dictionary<string, string> parents = new(StringComparer.Ordinal);

    public Groups(IReadOnlyList<PlacedDevice> devices, Naming naming)
    {
        var firstOf = devices
            .Where(d => SuppliesOf(d).Any())
            .ToDictionary(
                d => d.Tag,
                d => naming[d.Tag].Supply(SuppliesOf(d).First().Name),
                StringComparer.Ordinal
            );
        foreach (var device in devices)
        foreach (var supply in SuppliesOf(device).Where(s => s.Group != s.Name))
            Join(
                firstOf.GetValueOrDefault(supply.Group, $"group {supply.Group}"),
                naming[device.Tag].Supply(supply.Name)
            );
    }

    /// <summary>The group of a supply by its netlist name: a supply that stands for all of the group.</summary>
    public string Of(string supply)
    {
        while (parents.TryGetValue(supply, out var parent))
            supply = parent;
        return supply;
    }

    private static IEnumerable<Supply> SuppliesOf(PlacedDevice device) =>
        device.Blueprint.Network.Supplies.Concat(device.Blueprint.Network.Converters.Select(c => c.Output));

    private void Join(string to, string supply)
    {
        var (parent, child) = (Of(to), Of(supply));
        if (parent != child)
            parents.Add(child, parent);
    }
}
