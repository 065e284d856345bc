using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>
/// Makes one netlist of a panel: the networks of its devices in the netlist's names, their terminals joined, with the
/// contacts that are used, the wires to earth and what untraced wires may bring.
/// </summary>
internal sealed class Flattener(Panel panel, Naming naming)
{
    public Netlist Flatten()
    {
        var groups = new Groups(panel.Devices, naming);
        var devices = panel
            .Devices.Select(d => new DeviceFlattening(d, naming[d.Tag], groups, panel.Name))
            .ToList();
        var bonds = new BondFlattening(panel.Bonds);
        var untraced = new UntracedFlattening(panel);
        var netlist = new Netlist
        {
            Panel = panel.Name,
            Rules = panel.System.Rules,
            Frequency = panel.System.Frequency ?? 0,
            Earth = Naming.Earth,
            Nets =
            [
                Naming.Earth,
                .. panel.Nets.Select(n => n.Name),
                .. devices.SelectMany(d => d.InnerNets()),
            ],
            Supplies = [.. devices.SelectMany(d => d.Supplies()), .. untraced.Supplies()],
            Converters = [.. devices.SelectMany(d => d.Converters())],
            Couplings = [.. devices.SelectMany(d => d.Couplings())],
            Variables =
            [
                .. devices.SelectMany(d => d.Variables()),
                .. bonds.Variables(),
                .. untraced.Variables(),
            ],
            Powered = [.. devices.SelectMany(d => d.Powered())],
            Elements = [.. devices.SelectMany(d => d.Elements()), .. bonds.Elements()],
            Devices = [.. devices.Select(d => d.Device())],
            Loads = [.. devices.SelectMany(d => d.Loads())],
            Constraints =
            [
                .. devices.SelectMany(d => d.Constraints()),
                .. new LinkFlattening(panel, naming).Constraints(),
            ],
            Pairs = [.. devices.SelectMany(d => d.Pairs()), .. LinkFlattening.Pairs(panel)],
            Points = [.. Points()],
            Intents = panel.Intents,
            Assumed = Assumptions.Of(panel),
        };
        return PassingPositions.LeaveOut(netlist);
    }

    private IEnumerable<Point> Points()
    {
        var terminals =
            from device in panel.Devices
            from name in device.Terminals
            let terminal = new Terminal(device.Tag, name)
            select new Point(terminal.ToString(), naming.NetOf(terminal), device.Tag, device.Place);
        var names = panel.Nets.SelectMany(n => n.Names.Select(name => new Point(name, n.Name, null, null)));
        return [.. terminals, .. names, new Point(Naming.Earth, Naming.Earth, null, null)];
    }
}
