using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Which coil and which contacts belong together, and where the others are.</summary>
internal sealed class Coils
{
    private readonly Whereabouts where;
    private readonly Dictionary<string, (Rung Rung, RungPart Part)> homes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> poles;
    private readonly ILookup<string, (string Device, string Words)> links;
    private readonly Func<RungPart, ControlPart> read;

    /// <param name="read">What a part is.</param>
    public Coils(Panel panel, Division division, Whereabouts where, Func<RungPart, ControlPart> read)
    {
        (this.where, this.read) = (where, read);
        foreach (var device in panel.Devices)
        foreach (var (rung, part) in where.PassedOf(device.Tag))
            if (read(part).Role == ControlRole.Coil && homes.TryAdd(device.Tag, (rung, part)))
                break;
        poles = division
            .Units.GroupBy(u => u.Device.Tag, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => $"{g.Key}:{g.First().Terminals[0]}", StringComparer.Ordinal);
        links = panel
            .Devices.SelectMany(d =>
                d.Blueprint.Links.SelectMany(l =>
                    l.Devices.Distinct().Select(m => (Member: m, d.Tag, Words: Words(d.Tag, l, m)))
                )
            )
            .ToLookup(l => l.Member, l => (l.Tag, l.Words), StringComparer.Ordinal);
    }

    /// <summary>The coil at which a device's contacts are listed: the first one drawn.</summary>
    public bool IsHome(RungPart part) =>
        homes.TryGetValue(part.Device.Tag, out var home) && ReferenceEquals(home.Part, part);

    /// <summary>Whether a device is named at the coil of one that it links.</summary>
    public bool IsNoted(PlacedDevice linkage) =>
        linkage.Blueprint.Links.SelectMany(l => l.Devices).Any(homes.ContainsKey);

    /// <summary>Declared pairs and linkages of the device whose coil this is.</summary>
    public IEnumerable<(string Device, string Words)> LinksOf(RungPart coil) => links[coil.Device.Tag];

    /// <summary>Rows of the table at a coil: the contact, its sort, where it is.</summary>
    public IReadOnlyList<(string Name, string Sort, Place Place)> Table(RungPart coil)
    {
        var rows = where
            .PassedOf(coil.Device.Tag)
            .Where(p => read(p.Part).Role is ControlRole.Contact)
            .Select(p => ($"{p.Part.Left}-{p.Part.Right}", Sort(p.Part), Place.Of(p.Rung)));
        return poles.TryGetValue(coil.Device.Tag, out var terminal)
            ? [.. rows, ("main", "", Place.OnPower(terminal))]
            : [.. rows];
    }

    /// <summary>What a contact refers to: its coil's rung, else the power sheet, else other contacts of its device.</summary>
    public (string Before, IReadOnlyList<Place> Places)? Reference(Rung rung, RungPart contact)
    {
        var tag = contact.Device.Tag;
        if (homes.TryGetValue(tag, out var home))
            return (home.Rung.IsApart ? "coil" : "", [Place.Of(home.Rung)]);
        if (poles.TryGetValue(tag, out var terminal))
            return ("", [Place.OnPower(terminal)]);
        var others = where
            .PassedOf(tag)
            .Select(p => p.Rung)
            .Where(r => !ReferenceEquals(r, rung))
            .Take(3)
            .Select(Place.Of)
            .Distinct()
            .ToList();
        return others.Count == 0 ? null : ("also", others);
    }

    private string Sort(RungPart part)
    {
        var read = this.read(part);
        return read.Positions.Count > 0 ? "at"
            : read.ClosedAtRest ? "NC"
            : "NO";
    }

    private static string Words(string device, Devices.LinkRule link, string member)
    {
        var others = string.Join(" and ", link.Devices.Distinct().Where(d => d != member));
        return link.State is null
            ? $"{device}: {link.Rule} pair with {others}"
            : $"{device}: interlocked with {others}";
    }
}
