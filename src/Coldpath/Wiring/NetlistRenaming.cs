namespace Coldpath.Wiring;

/// <summary>A netlist under other names, or with other nets for single devices.</summary>
/// <param name="net">The new name of a net where a device meets it; the device's tag is empty where none does.</param>
/// <param name="name">The new name of anything else: device, variable, element, load, supply.</param>
internal sealed class NetlistRenaming(Func<string, string, string> net, Func<string, string> name)
{
    /// <summary>Gives a device's own parts another net in place of one that it shares.</summary>
    /// <param name="ends">By device and shared net, the net of its own.</param>
    public NetlistRenaming(IReadOnlyDictionary<(string Device, string Net), string> ends)
        : this((device, shared) => ends.GetValueOrDefault((device, shared), shared), own => own) { }

    /// <summary>The intents are left as they are: they speak in names, and are asked of the panel that says them.</summary>
    public Netlist Of(Netlist netlist)
    {
        var owners = new Owners(netlist);
        return netlist with
        {
            Nets = [.. netlist.Nets.Select(n => net("", n)).Distinct()],
            Elements = [.. netlist.Elements.Select(Element)],
            Variables = [.. netlist.Variables.Select(Variable)],
            Supplies = [.. netlist.Supplies.Select(s => Supply(owners.Of(s.Name), s))],
            Converters = [.. netlist.Converters.Select(c => Converter(owners.Of(c.Output.Name), c))],
            Couplings = [.. netlist.Couplings.Select(c => Coupling(owners.Of(c.Name), c))],
            Loads = [.. netlist.Loads.Select(l => Load(owners.Of(l), l))],
            Points = [.. netlist.Points.Select(p => Point(p, netlist.Earth))],
            Powered = [.. netlist.Powered.Select(o => o with { Variable = name(o.Variable) })],
            Devices = [.. netlist.Devices.Select(Device)],
            Constraints = [.. netlist.Constraints.Select(Constraint)],
            Pairs = [.. netlist.Pairs.Select(p => p with { Devices = Names(p.Devices) })],
        };
    }

    /// <summary>A condition with other names for the nets that it speaks of.</summary>
    public static Expression Of(Expression condition, Func<string, string> net) =>
        new NetlistRenaming((_, own) => net(own), own => own).Condition("", condition);

    private string[] Names(IEnumerable<string> names) => [.. names.Select(name)];

    private string[] Nets(string device, IEnumerable<string> nets) => [.. nets.Select(n => net(device, n))];

    private IReadOnlyList<IReadOnlyList<string>> Nets(
        string device,
        IReadOnlyList<IReadOnlyList<string>> windings
    ) => [.. windings.Select(w => Nets(device, w))];

    private NetPair[] Pairs(string device, IEnumerable<NetPair> pairs) =>
        [.. pairs.Select(p => new NetPair(net(device, p.A), net(device, p.B)))];

    private Point Point(Point point, string earth) =>
        point with
        {
            Name = point.Name == earth ? earth : name(point.Name),
            Net = net(point.Device ?? "", point.Net),
            Device = point.Device is { } device ? name(device) : null,
        };

    private Element Element(Element element) =>
        element with
        {
            Id = name(element.Id),
            Device = NameOf(element.Device),
            A = net(element.Device, element.A),
            B = net(element.Device, element.B),
            Closed = Condition(element.Device, element.Closed),
            Leaks = element.Leaks is { } leaks ? Condition(element.Device, leaks) : null,
            Burdens = [.. element.Burdens.Select(b => b with { When = Condition(element.Device, b.When) })],
        };

    private string NameOf(string device) => device.Length == 0 ? device : name(device);

    public Variable Variable(Variable variable) =>
        variable with
        {
            Name = name(variable.Name),
            Device = NameOf(variable.Device),
            Coil = Nets(variable.Device, variable.Coil),
            Moves =
            [
                .. variable.Moves.Select(m =>
                    m with
                    {
                        When = Condition(variable.Device, m.When),
                        May = Condition(variable.Device, m.May),
                    }
                ),
            ],
        };

    private Supply Supply(string device, Supply supply) =>
        supply with
        {
            Name = name(supply.Name),
            Group = name(supply.Group),
            Present = Condition(device, supply.Present),
            Store = supply.Store is { } store ? store with { Variable = name(store.Variable) } : null,
            Conductors =
            [
                .. supply.Conductors.Select(c =>
                    c with
                    {
                        Net = net(device, c.Net),
                        Present = Condition(device, c.Present),
                    }
                ),
            ],
        };

    private Converter Converter(string device, Converter converter) =>
        converter with
        {
            Name = name(converter.Name),
            Inputs = Nets(device, converter.Inputs),
            Windings = Nets(device, converter.Windings),
            When = Condition(device, converter.When),
            Output = Supply(device, converter.Output),
        };

    private Coupling Coupling(string device, Coupling coupling) =>
        coupling with
        {
            Name = name(coupling.Name),
            Windings = Nets(device, coupling.Windings),
        };

    private Load Load(string device, Load load) =>
        load with
        {
            Name = name(load.Name),
            Elements = Names(load.Elements),
            Terminals = Nets(device, load.Terminals),
            Modes =
            [
                .. load.Modes.Select(m =>
                    m with
                    {
                        Feed = Nets(device, m.Feed),
                        Joined = Pairs(device, m.Joined),
                        Apart = Pairs(device, m.Apart),
                    }
                ),
            ],
        };

    private NetlistDevice Device(NetlistDevice device) =>
        device with
        {
            Tag = name(device.Tag),
            Protects =
            [
                .. device.Protects.Select(p =>
                    p with
                    {
                        Elements = Names(p.Elements),
                        Variable = name(p.Variable),
                    }
                ),
            ],
            Isolates = device.Isolates is { } isolates
                ? isolates with
                {
                    Variable = isolates.Variable is { } position ? name(position) : null,
                    Elements = Names(isolates.Elements),
                }
                : null,
            OpensOnShort =
            [
                .. device.OpensOnShort.Select(o =>
                    o with
                    {
                        Variable = name(o.Variable),
                        Elements = Names(o.Elements),
                    }
                ),
            ],
            States =
            [
                .. device.States.Select(s => KeyValuePair.Create(s.Key, Condition(device.Tag, s.Value))),
            ],
        };

    private Constraint Constraint(Constraint constraint) =>
        constraint with
        {
            Name = name(constraint.Name),
            Holds = Condition("", constraint.Holds),
        };

    private Expression Condition(string device, Expression condition) =>
        condition switch
        {
            VariableIs v => v with { Variable = name(v.Variable) },
            Not n => new Not(Condition(device, n.Term)),
            All a => new All(a.Terms.Select(t => Condition(device, t))),
            Any a => new Any(a.Terms.Select(t => Condition(device, t))),
            Energised e => e with { A = net(device, e.A), B = net(device, e.B) },
            Fed f => f with { A = net(device, f.A), B = net(device, f.B), C = net(device, f.C) },
            SinglePhased s => new SinglePhased(net(device, s.A), net(device, s.B), net(device, s.C)),
            Joined j => new Joined(net(device, j.A), net(device, j.B)),
            Live l => new Live(net(device, l.Net)),
            Carries c => new Carries(name(c.Element)),
            Closed c => new Closed(name(c.Element)),
            Runs r => r with { Load = name(r.Load) },
            InShort s => new InShort(name(s.Supply)),
            _ => condition,
        };

    /// <summary>Whose things bear no device: the device whose tag begins the name, "T1", "K3.secondary".</summary>
    internal sealed class Owners(Netlist netlist)
    {
        private readonly HashSet<string> tags = [.. netlist.Devices.Select(d => d.Tag)];
        private readonly Dictionary<string, string> deviceOf = netlist.Elements.ToDictionary(
            e => e.Id,
            e => e.Device,
            StringComparer.Ordinal
        );

        public string Of(Load load) => load.Elements.Count > 0 ? deviceOf[load.Elements[0]] : Of(load.Name);

        public string Of(string name)
        {
            for (var tag = name; ; tag = tag[..tag.LastIndexOf('.')])
                if (tags.Contains(tag))
                    return tag;
                else if (!tag.Contains('.', StringComparison.Ordinal))
                    return "";
        }
    }
}
