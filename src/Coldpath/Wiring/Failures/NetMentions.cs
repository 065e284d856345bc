namespace Coldpath.Wiring.Failures;

/// <summary>What lies on a net: how many parts of a panel, and how many of one device.</summary>
internal sealed class NetMentions
{
    private readonly Dictionary<string, int> all = [];
    private readonly Dictionary<(string Device, string Net), int> own = [];

    public NetMentions(Netlist netlist)
    {
        var owners = new NetlistRenaming.Owners(netlist);
        foreach (var element in netlist.Elements)
            Count(element.Device, [element.A, element.B]);
        foreach (var variable in netlist.Variables)
            Count(variable.Device, NetsOf(variable));
        foreach (var supply in netlist.Supplies)
            Count(owners.Of(supply.Name), NetsOf(supply));
        foreach (var converter in netlist.Converters)
            Count(owners.Of(converter.Output.Name), NetsOf(converter));
        foreach (var coupling in netlist.Couplings)
            Count(owners.Of(coupling.Name), coupling.Windings.SelectMany(w => w));
        // A load of one part is where that part is; of several it counts besides.
        foreach (var load in netlist.Loads.Where(l => l.Elements.Count > 1))
            Count(owners.Of(load.Name), load.Modes.SelectMany(m => m.Feed));
        foreach (var intent in netlist.Intents)
            Count("", Guards.Nets(intent.When));
    }

    /// <summary>Nothing but one part lies on the net.</summary>
    public bool IsLast(string net) => Total(net) == 1;

    /// <summary>How many parts lie on the net.</summary>
    public int Total(string net) => all[net];

    /// <summary>Of the device only one part lies on the net.</summary>
    public bool IsOnly(string device, string net) => own[(device, net)] == 1;

    private void Count(string device, IEnumerable<string> nets)
    {
        foreach (var net in nets)
        {
            all[net] = all.GetValueOrDefault(net) + 1;
            own[(device, net)] = own.GetValueOrDefault((device, net)) + 1;
        }
    }

    private static IEnumerable<string> NetsOf(Variable variable) =>
        variable.Moves.SelectMany(m => Guards.Nets(m.When).Concat(Guards.Nets(m.May)));

    private static IEnumerable<string> NetsOf(Supply supply) => supply.Conductors.Select(c => c.Net);

    private static IEnumerable<string> NetsOf(Converter converter) =>
        converter
            .Inputs.Concat(converter.Windings.SelectMany(w => w))
            .Concat(Guards.Nets(converter.When))
            .Concat(NetsOf(converter.Output));
}
