using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels.Flattening;

/// <summary>
/// What a device's own names become in the netlist. A device's own variable and its first load, supply
/// and so on bear its tag alone, every other one the tag, a point and its own name.
/// </summary>
internal sealed class DeviceNames
{
    private readonly string tag;
    private readonly Func<Terminal, string> netOf;
    private readonly Func<string, IEnumerable<string>> sensingIn;
    private readonly string? ownVariable;
    private readonly string? firstLoad;
    private readonly string? firstSupply;
    private readonly string? firstCoupling;

    public DeviceNames(
        string tag,
        Blueprint blueprint,
        Func<Terminal, string> netOf,
        Func<string, IEnumerable<string>> sensingIn
    )
    {
        this.tag = tag;
        this.netOf = netOf;
        this.sensingIn = sensingIn;
        ownVariable = blueprint.OwnVariable;
        var network = blueprint.Network;
        firstLoad = network.Loads is [var load, ..] ? load.Name : null;
        var supplies = network.Supplies.Concat(network.Converters.Select(c => c.Output));
        firstCoupling = network.Couplings is [var coupling, ..] ? coupling.Name : null;
        firstSupply = supplies.FirstOrDefault()?.Name;
    }

    public string Net(string local) => netOf(new Terminal(tag, local));

    public IReadOnlyList<string> Nets(IReadOnlyList<string> local) => [.. local.Select(Net)];

    public string Variable(string local) => local == ownVariable ? tag : $"{tag}.{local}";

    public string Load(string local) => local == firstLoad ? tag : $"{tag}.{local}";

    public string Supply(string local) => local == firstSupply ? tag : $"{tag}.{local}";

    /// <summary>Couplings are only ever told apart.</summary>
    public string Coupling(string local) => local == firstCoupling ? tag : $"{tag}.{local}";

    public string Element(string local) => $"{tag}.{local}";

    /// <summary>"@T5" stands for the elements of another device that sense current.</summary>
    public IReadOnlyList<string> Elements(IReadOnlyList<string> local) =>
        [.. local.SelectMany(e => Mentions.DeviceIn(e) is { } other ? sensingIn(other) : [Element(e)])];

    /// <summary>The condition in the netlist's names.</summary>
    public Expression Of(Expression local) =>
        local switch
        {
            Constant or Quiet => local,
            VariableIs v => new VariableIs(Variable(v.Variable), v.Value),
            Not n => new Not(Of(n.Term)),
            All a => new All(a.Terms.Select(Of)),
            Any a => new Any(a.Terms.Select(Of)),
            Energised e => e with { A = Net(e.A), B = Net(e.B) },
            CarriesIn c => Expression.AnyOf(sensingIn(c.Device).Select(e => new Carries(e))),
            Carries c => new Carries(Element(c.Element)),
            Closed c => new Closed(Element(c.Element)),
            Fed f => f with { A = Net(f.A), B = Net(f.B), C = Net(f.C) },
            SinglePhased s => new SinglePhased(Net(s.A), Net(s.B), Net(s.C)),
            Joined j => new Joined(Net(j.A), Net(j.B)),
            Live l => new Live(Net(l.Net)),
            Runs r => r with { Load = Load(r.Load) },
            InShort s => new InShort(Supply(s.Supply)),
            _ => throw new ArgumentOutOfRangeException(
                nameof(local),
                local,
                "an expression of no known form"
            ),
        };
}
