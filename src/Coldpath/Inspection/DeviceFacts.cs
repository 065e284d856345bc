using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Look-ups from tags to what the netlist says of a device.</summary>
public sealed class DeviceFacts
{
    private readonly Behaviour behaviour;
    private readonly Dictionary<string, NetlistDevice> devices;
    private readonly Dictionary<string, Element> elements;
    private readonly ILookup<string, Element> elementsOf;
    private readonly ILookup<string, Variable> variablesOf;
    private readonly HashSet<(string A, string B)> coils;
    private readonly Dictionary<string, string> nets;

    public DeviceFacts(Netlist netlist, Behaviour behaviour)
    {
        this.behaviour = behaviour;
        All = netlist.Devices;
        devices = netlist.Devices.ToDictionary(d => d.Tag);
        elements = netlist.Elements.ToDictionary(e => e.Id);
        elementsOf = netlist.Elements.ToLookup(e => e.Device);
        coils = [.. netlist.Variables.Where(v => v.Coil.Count == 2).Select(v => (v.Coil[0], v.Coil[1]))];
        nets = netlist.Points.ToDictionary(p => p.Name, p => p.Net);
        variablesOf = netlist.Variables.ToLookup(v => v.Device);
    }

    /// <summary>In declared order.</summary>
    public IReadOnlyList<NetlistDevice> All { get; }

    public NetlistDevice this[string tag] => devices[tag];

    public bool Known(string tag) => devices.ContainsKey(tag);

    public Element Element(string id) => elements[id];

    public Element? TryElement(string id) => elements.GetValueOrDefault(id);

    public IEnumerable<Element> Elements(string tag) => elementsOf[tag];

    public IEnumerable<Variable> Variables(string tag) => variablesOf[tag];

    /// <summary>Contacts and semiconductors that a load's feed can pass.</summary>
    public IEnumerable<Element> Poles(string tag) =>
        elementsOf[tag].Where(e => e.Power && e.Type is ElementType.Contact or ElementType.Semiconductor);

    /// <summary>Some pole conducts.</summary>
    public Diagram AnyClosed(string tag) =>
        behaviour.Space.Table.AnyOf(Poles(tag).Select(e => behaviour.Network.Closed(e.Id)));

    /// <summary>States in which the device is in one of its kind's states; none where the kind has no such state.</summary>
    public Diagram InState(string tag, string words)
    {
        var state = devices[tag].States.Where(s => s.Key == words).Select(s => s.Value).FirstOrDefault();
        return state is null ? Diagram.False : behaviour.Of(state);
    }

    /// <summary>It has poles, and they move by themselves: a contactor, a starter, not a switch or a breaker.</summary>
    public bool IsController(string tag) =>
        Poles(tag).Any() && MovesItself(tag) && devices[tag].OpensOnShort.Count == 0;

    /// <summary>Tags of all controllers, in declared order.</summary>
    public IEnumerable<string> Controllers => All.Select(d => d.Tag).Where(IsController);

    public bool HasSemiconductor(string tag) => Poles(tag).Any(e => e.Type == ElementType.Semiconductor);

    /// <summary>Devices with an isolating function, in declared order.</summary>
    public IEnumerable<NetlistDevice> Isolators => All.Where(d => d.Isolates is not null);

    /// <summary>A terminal of a main pole or of a coil.</summary>
    public bool NeedsWire(Terminal terminal)
    {
        return elementsOf[terminal.Device]
            .Any(e =>
                (e.Power || coils.Contains((e.A, e.B))) && (e.A == NetOf(terminal) || e.B == NetOf(terminal))
            );
    }

    private string NetOf(Terminal terminal) => nets.GetValueOrDefault(terminal.ToString(), "");

    private bool MovesItself(string tag) => variablesOf[tag].Any(v => v.Moves.Any(m => m.By == Mover.Settle));
}
