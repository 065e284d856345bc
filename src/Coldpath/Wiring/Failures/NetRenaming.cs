namespace Coldpath.Wiring.Failures;

/// <summary>Gives a device's own parts another net in place of one that it shares.</summary>
/// <param name="ends">By device and shared net, the net of its own.</param>
internal sealed class NetRenaming(IReadOnlyDictionary<(string Device, string Net), string> ends)
{
    public Netlist Of(Netlist netlist)
    {
        var deviceOf = netlist.Elements.ToDictionary(e => e.Id, e => e.Device);
        return netlist with
        {
            Elements =
            [
                .. netlist.Elements.Select(e => e with { A = Net(e.Device, e.A), B = Net(e.Device, e.B) }),
            ],
            Variables = [.. netlist.Variables.Select(Variable)],
            Supplies = [.. netlist.Supplies.Select(s => Supply(Owner(netlist, s.Name), s))],
            Converters = [.. netlist.Converters.Select(c => Converter(Owner(netlist, c.Output.Name), c))],
            Couplings =
            [
                .. netlist.Couplings.Select(c =>
                    c with
                    {
                        Windings = Nets(Owner(netlist, c.Name), c.Windings),
                    }
                ),
            ],
            Loads =
            [
                .. netlist.Loads.Select(l =>
                    Load(l.Elements.Count > 0 ? deviceOf[l.Elements[0]] : Owner(netlist, l.Name), l)
                ),
            ],
            Points = [.. netlist.Points.Select(p => p.Device is { } d ? p with { Net = Net(d, p.Net) } : p)],
        };
    }

    /// <summary>The device whose tag begins the name: "T1", "K3.secondary".</summary>
    internal static string Owner(Netlist netlist, string name) =>
        netlist
            .Devices.Select(d => d.Tag)
            .Where(tag => name == tag || name.StartsWith(tag + ".", StringComparison.Ordinal))
            .OrderByDescending(tag => tag.Length)
            .FirstOrDefault("");

    private string Net(string device, string net) => ends.GetValueOrDefault((device, net), net);

    private string[] Nets(string device, IEnumerable<string> nets) => [.. nets.Select(n => Net(device, n))];

    private IReadOnlyList<IReadOnlyList<string>> Nets(
        string device,
        IReadOnlyList<IReadOnlyList<string>> windings
    ) => [.. windings.Select(w => Nets(device, w))];

    private NetPair[] Pairs(string device, IEnumerable<NetPair> pairs) =>
        [.. pairs.Select(p => new NetPair(Net(device, p.A), Net(device, p.B)))];

    public Variable Variable(Variable variable) =>
        variable with
        {
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
            Conductors = [.. supply.Conductors.Select(c => c with { Net = Net(device, c.Net) })],
        };

    private Converter Converter(string device, Converter converter) =>
        converter with
        {
            Inputs = Nets(device, converter.Inputs),
            Windings = Nets(device, converter.Windings),
            When = Condition(device, converter.When),
            Output = Supply(device, converter.Output),
        };

    private Load Load(string device, Load load) =>
        load with
        {
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

    private Expression Condition(string device, Expression condition) =>
        condition switch
        {
            Not n => new Not(Condition(device, n.Term)),
            All a => new All(a.Terms.Select(t => Condition(device, t))),
            Any a => new Any(a.Terms.Select(t => Condition(device, t))),
            Energised e => e with { A = Net(device, e.A), B = Net(device, e.B) },
            Fed f => f with { A = Net(device, f.A), B = Net(device, f.B), C = Net(device, f.C) },
            SinglePhased s => new SinglePhased(Net(device, s.A), Net(device, s.B), Net(device, s.C)),
            Joined j => new Joined(Net(device, j.A), Net(device, j.B)),
            Live l => new Live(Net(device, l.Net)),
            _ => condition,
        };
}
