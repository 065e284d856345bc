using Coldpath.Devices;
using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Interlocks and declared pairs, as the devices that they join see them.</summary>
internal sealed class DeviceLinks(Panel panel)
{
    private static readonly HashSet<string> Mechanical = new(StringComparer.Ordinal) { "mechanical", "key" };

    private readonly ILookup<string, (PlacedDevice Device, LinkRule Link)> byMember = (
        from device in panel.Devices
        from link in device.Blueprint.Links
        from member in link.Devices
        select (member, device, link)
    ).ToLookup(l => l.member, l => (l.device, l.link), StringComparer.Ordinal);

    /// <summary>What a device's label says of its links: "MI1: mechanical interlock with K3".</summary>
    public IEnumerable<(string Tag, string Words)> Of(string tag) =>
        byMember[tag]
            .Select(l =>
                (
                    l.Device.Tag,
                    $"{l.Device.Tag}: {l.Device.Blueprint.Kind.Name} with {Others(l.Link.Devices, tag)}"
                )
            );

    /// <summary>Links that are drawn as dashed lines: the linking device and the linked ones.</summary>
    public IEnumerable<(PlacedDevice Device, IReadOnlyList<string> Linked)> Drawn() =>
        from device in panel.Devices
        from link in device.Blueprint.Links
        where Mechanical.Contains(link.Rule)
        select (device, link.Devices);

    private static string Others(IEnumerable<string> devices, string tag) =>
        string.Join(", ", devices.Where(d => d != tag));
}
