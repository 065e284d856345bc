using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Interlocks and declared pairs, as the devices that they join see them.</summary>
internal sealed class DeviceLinks(Panel panel)
{
    private static readonly HashSet<string> Mechanical = new(StringComparer.Ordinal) { "mechanical", "key" };

    /// <summary>What a device's label says of its links: "MI1: interlocked with K3".</summary>
    public IEnumerable<(string Tag, string Words)> Of(string tag) =>
        from device in panel.Devices
        from link in device.Blueprint.Links
        where link.Devices.Contains(tag)
        select (device.Tag, $"{device.Tag}: {device.Blueprint.Kind.Name} with {Others(link.Devices, tag)}");

    /// <summary>Links that are drawn as dashed lines: the linking device and the linked ones.</summary>
    public IEnumerable<(PlacedDevice Device, IReadOnlyList<string> Linked)> Drawn() =>
        from device in panel.Devices
        from link in device.Blueprint.Links
        where Mechanical.Contains(link.Rule)
        select (device, link.Devices);

    private static string Others(IEnumerable<string> devices, string tag) =>
        string.Join(", ", devices.Where(d => d != tag));
}
