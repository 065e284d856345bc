using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>One device in the netlist's names.</summary>
internal sealed class DeviceFlattening(PlacedDevice device, DeviceNames names, Groups groups, string panel)
{
    private readonly Netlist network = device.Blueprint.Network;
    private readonly IReadOnlyList<FamilyContact> contacts =
    [
        .. device.Contacts.Select(c =>
            c.Family.Contact(c.Number, c.Positions, ValuesOf(device, c.Family.Positions))
        ),
    ];

    public IEnumerable<string> InnerNets() =>
        network.Nets.Where(n => n.StartsWith('*') && n != "*").Select(names.Net);

    public IEnumerable<Supply> Supplies() => network.Supplies.Select(Supply);

    public IEnumerable<Converter> Converters() =>
        network.Converters.Select(c =>
            c with
            {
                Name = names.Supply(c.Output.Name),
                Inputs = names.Nets(c.Inputs),
                Windings = Windings(c.Windings),
                When = names.Of(c.When),
                Output = Supply(c.Output),
            }
        );

    public IEnumerable<Coupling> Couplings() =>
        network.Couplings.Select(c =>
            c with
            {
                Name = names.Coupling(c.Name),
                Windings = Windings(c.Windings),
            }
        );

    public IEnumerable<Variable> Variables() =>
        network.Variables.Concat(contacts.Select(c => c.Weld).OfType<Variable>()).Select(Variable);

    /// <summary>What closes it when the panel is powered; nothing when it is on standby.</summary>
    public IEnumerable<Operation> Powered() => device.Standby ? [] : Closing();

    public IEnumerable<Element> Elements() =>
        network.Elements.Concat(contacts.Select(c => c.Element)).Select(Element);

    public NetlistDevice Device() =>
        new()
        {
            Tag = device.Tag,
            Panel = panel,
            Kind = device.Blueprint.Kind.Name,
            Place = device.Place,
            Use = device.Blueprint.Use,
            Emergency = network.Devices.Any(d => d.Emergency),
            States = [.. device.Blueprint.States.Select(s => KeyValuePair.Create(s.Key, names.Of(s.Value)))],
            Protects = [.. network.Devices.SelectMany(d => d.Protects).Select(Protection)],
            Isolates = network.Devices.Select(d => d.Isolates).FirstOrDefault(i => i is not null)
                is { } isolation
                ? Isolation(isolation)
                : null,
            OpensOnShort = [.. network.Devices.SelectMany(d => d.OpensOnShort).Select(ShortOpening)],
            Ratings = [.. device.Blueprint.Ratings.Select(r => KeyValuePair.Create(r.Name, r.Text))],
            Span = Places.Of(device.Span),
        };

    public IEnumerable<Load> Loads() =>
        network.Loads.Select(l =>
            l with
            {
                Name = names.Load(l.Name),
                Elements = names.Elements(l.Elements),
                Terminals = names.Nets(l.Terminals),
                Modes = [.. l.Modes.Select(Mode)],
            }
        );

    public IEnumerable<Constraint> Constraints() =>
        network.Constraints.Select(c =>
            c with
            {
                Name = $"{device.Tag} {c.Name}",
                Holds = names.Of(c.Holds),
            }
        );

    public IEnumerable<DevicePair> Pairs() => network.Pairs;

    private IEnumerable<Operation> Closing() =>
        network.Powered.Select(o => o with { Variable = names.Variable(o.Variable) });

    private IReadOnlyList<IReadOnlyList<string>> Windings(IReadOnlyList<IReadOnlyList<string>> windings) =>
        [.. windings.Select(names.Nets)];

    private Supply Supply(Supply supply) =>
        supply with
        {
            Name = names.Supply(supply.Name),
            Group = groups.Of(names.Supply(supply.Name)),
            Present = names.Of(supply.Present),
            Store = supply.Store is { } store
                ? store with
                {
                    Variable = names.Variable(store.Variable),
                }
                : null,
            Conductors =
            [
                .. supply.Conductors.Select(c =>
                    c with
                    {
                        Net = names.Net(c.Net),
                        Present = names.Of(c.Present),
                    }
                ),
            ],
        };

    private Variable Variable(Variable variable) =>
        variable with
        {
            Name = names.Variable(variable.Name),
            Device = device.Tag,
            Standby = device.Standby && network.Powered.Any(o => o.Variable == variable.Name),
            Coil = names.Nets(variable.Coil),
            Moves =
            [
                .. variable.Moves.Select(m => m with { When = names.Of(m.When), May = names.Of(m.May) }),
            ],
        };

    private Element Element(Element element) =>
        element with
        {
            Id = names.Element(element.Id),
            Device = device.Tag,
            A = names.Net(element.A),
            B = names.Net(element.B),
            Closed = names.Of(element.Closed),
            Leaks = element.Leaks is { } leaks ? names.Of(leaks) : null,
            Burdens = [.. element.Burdens.Select(b => b with { When = names.Of(b.When) })],
        };

    private Protection Protection(Protection protection) =>
        protection with
        {
            Elements = names.Elements(protection.Elements),
            Variable = names.Variable(protection.Variable),
        };

    private Isolation Isolation(Isolation isolation) =>
        isolation with
        {
            Variable = isolation.Variable is { } variable ? names.Variable(variable) : null,
            Elements = names.Elements(isolation.Elements),
        };

    private ShortOpening ShortOpening(ShortOpening opening) =>
        opening with
        {
            Variable = names.Variable(opening.Variable),
            Elements = names.Elements(opening.Elements),
        };

    private LoadMode Mode(LoadMode mode) =>
        mode with
        {
            Feed = names.Nets(mode.Feed),
            Joined = [.. mode.Joined.Select(Pair)],
            Apart = [.. mode.Apart.Select(Pair)],
        };

    private NetPair Pair(NetPair pair) => new(names.Net(pair.A), names.Net(pair.B));

    private static IReadOnlyList<string> ValuesOf(PlacedDevice device, string? variable) =>
        device.Blueprint.Network.Variables.FirstOrDefault(v => v.Name == variable)?.Values ?? [];
}
