using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>What terminals and devices are called in the netlist.</summary>
internal sealed class Naming
{
    public const string Earth = "PE";

    private readonly Dictionary<Terminal, string> nets;
    private readonly Dictionary<string, DeviceNames> devices = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<string>> sensing = new(StringComparer.Ordinal);

    public Naming(IEnumerable<(string Tag, Blueprint Blueprint)> devices, IEnumerable<PanelNet> nets)
    {
        this.nets = nets.SelectMany(n => n.Terminals.Select(t => (t, n.Name))).ToDictionary();
        foreach (var (tag, blueprint) in devices)
        {
            this.devices.Add(tag, new DeviceNames(tag, blueprint, NetOf, SensingIn));
            sensing.Add(tag, [.. Sensing(blueprint).Select(e => this.devices[tag].Element(e.Id))]);
        }
    }

    public DeviceNames this[string tag] => devices[tag];

    /// <summary>The net of a terminal; a net inside a device is called by the device and its own name.</summary>
    public string NetOf(Terminal terminal) =>
        nets.TryGetValue(terminal, out var name) ? name
        : terminal.Name == Earth ? Earth
        : terminal.ToString();

    /// <summary>Elements in which a device senses the current that passes it.</summary>
    public static IEnumerable<Element> Sensing(Blueprint blueprint) =>
        blueprint.Network.Elements.Where(e => e.Type == ElementType.Thermal);

    private IReadOnlyList<string> SensingIn(string tag) => sensing.GetValueOrDefault(tag, []);
}
