using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Which elements carry current. Each supply is a hub joined to its conductors' nets; an element carries when it
/// lies on a simple cycle through a hub. Both ends being reached is not enough: a dead end carries nothing.
/// </summary>
internal sealed class Carrying
{
    private readonly Mesh mesh;
    private readonly Sources sources;
    private readonly Shorts shorts;
    private readonly Lazy<FanGraph> current;
    private readonly Lazy<FanGraph> shortCurrent;
    private readonly Lazy<FanGraph> loose;

    public Carrying(Mesh mesh, Sources sources, Shorts shorts)
    {
        this.mesh = mesh;
        this.sources = sources;
        this.shorts = shorts;
        var named = NamedIn.Of(mesh.Netlist);
        var carrying = named.Elements.Select(id => EndsOf(mesh.ById[id])).ToArray();
        current = new(() => new(mesh.Table, CurrentGraph(), carrying));
        shortCurrent = new(() => new(mesh.Table, ShortGraph(), carrying));
        loose = new(() =>
            new(mesh.Table, LooseGraph(), named.LoosePairs.Select(p => (mesh.Net(p.A), mesh.Net(p.B))))
        );
    }

    private DiagramTable Table => mesh.Table;

    public Diagram Carries(Link link)
    {
        var conducts = link.Closed;
        if (link.Type == ElementType.Load)
            conducts = Table.Except(conducts, mesh.Joined(link.A, link.B));
        return Table.And(conducts, OnCycle(current.Value, EndsOf(link), LastingHubs));
    }

    /// <summary>
    /// The element is solid and lies on a cycle of solid elements through a conductor that drives the current of a
    /// short: each two elements of a block share a cycle, and with one cycle in it that does not sum to zero every
    /// element of the block lies on such a one.
    /// </summary>
    public Diagram CarriesShort(Link link) => CarriesShort(link, sources.Lasting.SelectMany(s => s));

    /// <summary>As above, through a conductor of this supply.</summary>
    public Diagram CarriesShort(Link link, int supply) => CarriesShort(link, sources.BySupply[supply]);

    private Diagram CarriesShort(Link link, IEnumerable<Source> conductors)
    {
        if (!link.IsSolid)
            return Diagram.False;
        var ways =
            from conductor in conductors
            let driven = Table.And(link.Closed, shorts.DrivenBy(conductor))
            where !driven.IsFalse
            select Table.And(driven, shortCurrent.Value.Holds(SpokeOf(conductor), EndsOf(link)));
        return Table.AnyOf(ways);
    }

    /// <summary>
    /// A load between the two nets would carry current, with leaks and couplings counted as conducting (these both
    /// ways, as current needs a way back) and stored sources as supplies.
    /// </summary>
    public Diagram WouldCarry(int a, int b)
    {
        if (a == b)
            return Diagram.False;
        var cycle = OnCycle(loose.Value, (a, b), Enumerable.Range(0, sources.SupplyCount));
        return cycle.IsFalse ? cycle : Table.Except(cycle, mesh.Joined(a, b));
    }

    private IEnumerable<int> LastingHubs => sources.Lasting.Select(s => s[0].SupplyIndex);

    private Diagram OnCycle(FanGraph graph, (int A, int B) ends, IEnumerable<int> hubs) =>
        Table.AnyOf(hubs.Select(hub => graph.Holds(mesh.NetCount + hub, ends)));

    private static (int A, int B) EndsOf(Link link) => (link.A, link.B);

    private GuardedGraph CurrentGraph()
    {
        var graph = WithHubs(source => !source.IsStored);
        foreach (var link in mesh.Links)
            graph.Join(link.A, link.B, link.Closed);
        return graph;
    }

    /// <summary>Solid elements, and each conductor as a node of its own between its supply and its net.</summary>
    private GuardedGraph ShortGraph()
    {
        var graph = new GuardedGraph(Table, mesh.NetCount + sources.SupplyCount + sources.All.Count);
        foreach (var source in sources.All.Where(s => !s.IsStored))
        {
            graph.Join(mesh.NetCount + source.SupplyIndex, SpokeOf(source), source.On);
            graph.Join(SpokeOf(source), source.Net, Diagram.True);
        }
        foreach (var link in mesh.Links)
            if (link.IsSolid)
                graph.Join(link.A, link.B, link.Closed);
            else if (link.Type == ElementType.Diode)
                graph.Join(link.A, link.B, shorts.Of(link));
        return graph;
    }

    private int SpokeOf(Source source) => mesh.NetCount + sources.SupplyCount + source.Index;

    private GuardedGraph LooseGraph()
    {
        var graph = WithHubs(_ => true);
        foreach (var link in mesh.Links)
            graph.Join(link.A, link.B, Table.Or(link.Closed, link.Leaks));
        foreach (var (a, b, _) in mesh.CouplingLinks())
            graph.Join(a, b, Diagram.True);
        return graph;
    }

    private GuardedGraph WithHubs(Func<Source, bool> counts)
    {
        var graph = new GuardedGraph(Table, mesh.NetCount + sources.SupplyCount);
        foreach (var source in sources.All.Where(counts))
            graph.Join(mesh.NetCount + source.SupplyIndex, source.Net, source.On);
        return graph;
    }
}
