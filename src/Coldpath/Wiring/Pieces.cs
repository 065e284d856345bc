namespace Coldpath.Wiring;

/// <summary>A netlist cut into what hangs together, and parts of netlists by their devices.</summary>
public static class Pieces
{
    /// <summary>One netlist for all devices that share nets with each other, the earth aside; in declared order.</summary>
    public static IEnumerable<Netlist> Of(Netlist netlist)
    {
        var ofNet = new Dictionary<string, string>(StringComparer.Ordinal);
        var root = netlist.Devices.ToDictionary(d => d.Tag, d => d.Tag, StringComparer.Ordinal);
        foreach (var (device, net) in DeviceNets(netlist).Where(p => p.Net != netlist.Earth))
            if (!ofNet.TryAdd(net, device))
                root[Root(device)] = Root(ofNet[net]);
        return netlist
            .Devices.Select(d => d.Tag)
            .GroupBy(Root)
            .Select(piece => Only(netlist, piece.ToHashSet(StringComparer.Ordinal)));

        string Root(string device)
        {
            while (root[device] != device)
                device = root[device];
            return device;
        }
    }

    /// <summary>
    /// The netlist without what these supplies feed in: their conductors are dead ends until something else is joined
    /// to them. The devices and their points stay.
    /// </summary>
    public static Netlist WithoutSupplies(this Netlist netlist, IReadOnlyCollection<string> devices) =>
        netlist with
        {
            Supplies = [.. netlist.Supplies.Where(s => !devices.Contains(OwnerOf(s.Name, devices)))],
            Elements = [.. netlist.Elements.Where(e => !devices.Contains(e.Device))],
            Variables = [.. netlist.Variables.Where(v => !devices.Contains(v.Device))],
            Devices = [.. netlist.Devices.Select(d => devices.Contains(d.Tag) ? d with { States = [] } : d)],
        };

    private static Netlist Only(Netlist netlist, HashSet<string> devices)
    {
        var nets = DeviceNets(netlist).Where(p => devices.Contains(p.Device)).Select(p => p.Net).ToHashSet();
        return netlist with
        {
            Nets = [.. netlist.Nets.Where(n => n == netlist.Earth || nets.Contains(n))],
            Supplies = [.. netlist.Supplies.Where(s => devices.Contains(OwnerOf(s.Name, devices)))],
            Converters =
            [
                .. netlist.Converters.Where(c => devices.Contains(OwnerOf(c.Output.Name, devices))),
            ],
            Couplings = [.. netlist.Couplings.Where(c => devices.Contains(OwnerOf(c.Name, devices)))],
            Variables = [.. netlist.Variables.Where(v => devices.Contains(v.Device))],
            Elements = [.. netlist.Elements.Where(e => devices.Contains(e.Device))],
            Devices = [.. netlist.Devices.Where(d => devices.Contains(d.Tag))],
            Loads = [.. netlist.Loads.Where(l => devices.Contains(OwnerOf(l.Name, devices)))],
            Points = [.. netlist.Points.Where(p => p.Device is { } d && devices.Contains(d))],
        };
    }

    private static IEnumerable<(string Device, string Net)> DeviceNets(Netlist netlist) =>
        netlist
            .Elements.Where(e => e.Device.Length > 0)
            .SelectMany(e => new[] { (e.Device, e.A), (e.Device, e.B) })
            .Concat(netlist.Points.Where(p => p.Device is not null).Select(p => (p.Device!, p.Net)));

    /// <summary>"T1" for "T1" and "T1.second".</summary>
    private static string OwnerOf(string name, IReadOnlyCollection<string> devices)
    {
        for (var tag = name; ; tag = tag[..tag.LastIndexOf('.')])
            if (devices.Contains(tag) || !tag.Contains('.', StringComparison.Ordinal))
                return tag;
    }
}
