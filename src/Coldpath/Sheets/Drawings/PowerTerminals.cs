using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>Which terminals of a device belong on the power sheet.</summary>
internal static class PowerTerminals
{
    /// <summary>In the device's order; empty when it is drawn in rungs alone.</summary>
    public static IReadOnlyList<string> Of(
        PlacedDevice device,
        IReadOnlySet<Terminal> onPower,
        IReadOnlySet<Terminal> inRungs,
        IReadOnlySet<Terminal> passedInRungs
    )
    {
        var own = OfElements(device).Concat(OfSources(device)).ToHashSet(StringComparer.Ordinal);
        var bare = device.Blueprint.Parts.Count == 0 && device.Blueprint.Families.Count == 0;
        var alone = bare && !device.Terminals.Any(t => inRungs.Contains(new(device.Tag, t)));
        return
        [
            .. device.Terminals.Where(t =>
                onPower.Contains(new(device.Tag, t))
                || ((own.Contains(t) || alone) && !passedInRungs.Contains(new(device.Tag, t)))
            ),
        ];
    }

    /// <summary>Ends of what a load's feed can pass, through nets inside the device too.</summary>
    public static IReadOnlySet<string> OfElements(PlacedDevice device) =>
        device
            .Blueprint.Network.Elements.Where(e => e.Power)
            .SelectMany(e => new[] { e.A, e.B })
            .Where(device.Terminals.Contains)
            .ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<string> OfSources(PlacedDevice device)
    {
        var network = device.Blueprint.Network;
        return network
            .Supplies.Concat(network.Converters.Select(c => c.Output))
            .SelectMany(s => s.Conductors.Select(c => c.Net))
            .Concat(network.Converters.SelectMany(c => c.Inputs.Concat(c.Windings.SelectMany(w => w))));
    }
}
