using System.Numerics;
using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>Gathers a circuit: nets, or whole components of them, become nodes, and each supply gets one for its star.</summary>
/// <param name="network">Whose nets and supplies.</param>
/// <param name="nodeOf">The net that stands for a net.</param>
internal sealed class CircuitryBuilder(Network network, Func<int, int> nodeOf)
{
    private readonly Dictionary<int, int> nodes = [];
    private readonly List<Branch> branches = [];
    private readonly List<Transformation> transformations = [];
    private readonly List<Valve> valves = [];

    public int Node(int net) => Number(nodeOf(net));

    public int Node(string net) => Node(network.Mesh.Net(net));

    /// <summary>An element with this impedance, open ones too.</summary>
    public void Add(Link link, Complex ohms) =>
        branches.Add(new(link.Element.Id, Node(link.A), Node(link.B), ohms));

    public void AddValve(Link link, double drop) =>
        valves.Add(new(link.Element.Id, Node(link.A), Node(link.B), drop));

    /// <summary>The conductors of a supply that are on, with their volts or none when it is not its turn.</summary>
    public void Add(IEnumerable<Source> supply, bool driving)
    {
        foreach (var source in supply)
            branches.Add(
                new(
                    source.Name,
                    Number(-1 - source.SupplyIndex),
                    Node(source.Net),
                    Inner(source.Supply.Ohms),
                    driving ? source.Volts : 0
                )
            );
    }

    /// <summary>What lies between two conductors of a supply that is off.</summary>
    public void AddDead(Source a, Source b, Complex ohms) =>
        branches.Add(new(b.Name, Node(a.Net), Node(b.Net), ohms));

    public void Add(Converter transformer)
    {
        var windings = transformer.Windings;
        transformations.Add(
            new(
                transformer.Name,
                Node(windings[0][0]),
                Node(windings[0][1]),
                Node(windings[1][0]),
                Node(windings[1][1]),
                transformer.Ratio,
                Inner(transformer.Ohms)
            )
        );
    }

    public Circuitry Build(int earth)
    {
        var at = Node(earth);
        return new(nodes.Count, at, [.. branches], [.. transformations], [.. valves]);
    }

    private int Number(int net)
    {
        if (!nodes.TryGetValue(net, out var number))
            nodes.Add(net, number = nodes.Count);
        return number;
    }

    private static Complex Inner(Ohms ohms) =>
        ohms.Resistance > 0 || ohms.Reactance > 0
            ? new(ohms.Resistance, ohms.Reactance)
            : new(Impedances.Solid, 0);
}
