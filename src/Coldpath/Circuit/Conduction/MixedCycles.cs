using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>
/// Shorts between supplies of different angle references: a cycle that passes two of these never sums to zero, so it
/// only has to be found and no voltage be compared. Solid components and supplies are the nodes of a graph, each
/// conductor joins its supply to the component it lies in, and by Menger's theorem two things lie on one cycle when
/// they stay joined whatever single node is taken out.
/// </summary>
internal sealed class MixedCycles
{
    private readonly Mesh mesh;
    private readonly IReadOnlyList<Source> conductors;
    private readonly int[] nets;
    private readonly Source[] supplies;
    private readonly Diagram[,] together;
    private readonly Spread[][] without;

    /// <param name="mesh">What joins their nets.</param>
    /// <param name="conductors">Of supplies that may come together.</param>
    public MixedCycles(Mesh mesh, IReadOnlyList<Source> conductors)
    {
        (this.mesh, this.conductors) = (mesh, conductors);
        nets = [.. conductors.Select(c => c.Net).Distinct()];
        supplies = [.. conductors.DistinctBy(c => c.SupplyIndex)];
        together = Together();
        without = [.. supplies.Select((_, hub) => Reaches(c => HubOf(c) == hub ? Diagram.False : c.On))];
    }

    private DiagramTable Table => mesh.Table;

    /// <summary>
    /// Each supply with the condition under which the voltage between two of its conductors lies on such a cycle. That
    /// voltage is there whatever stands between, so no supply can be in the way.
    /// </summary>
    public IEnumerable<(int Supply, Diagram When)> Shorted() =>
        from hub in Enumerable.Range(0, supplies.Length)
        select (supplies[hub].SupplyIndex, Table.AnyOf(Strangers(hub).Select(b => together[hub, b])));

    /// <summary>Each conductor with the condition under which it lies on such a cycle itself.</summary>
    public IEnumerable<(Source Conductor, Diagram When)> Driving() =>
        from conductor in conductors
        let hub = HubOf(conductor)
        let ways = Strangers(hub).Select(other => Driven(conductor, hub, other))
        select (conductor, Table.And(conductor.On, Table.AnyOf(ways)));

    private Diagram Driven(Source conductor, int hub, int other)
    {
        var driven = together[hub, other];
        for (var third = 0; third < supplies.Length; third++)
            if (third != hub && third != other && !driven.IsFalse)
                driven = Table.And(driven, without[third][hub][other]);
        return driven.IsFalse ? driven : Table.And(driven, without[hub][other][NodeOf(conductor)]);
    }

    /// <summary>For each two supplies whether they stay joined whatever component is taken out.</summary>
    private Diagram[,] Together()
    {
        var all = new Diagram[supplies.Length, supplies.Length];
        for (var a = 0; a < supplies.Length; a++)
        for (var b = 0; b < supplies.Length; b++)
            all[a, b] = supplies[a].Supply.Group == supplies[b].Supply.Group ? Diagram.False : Diagram.True;
        foreach (var net in nets)
        {
            var reach = Reaches(c => Table.Except(c.On, mesh.Joined(c.Net, net)));
            for (var a = 0; a < supplies.Length; a++)
            for (var b = 0; b < a; b++)
                if (!all[a, b].IsFalse)
                    all[a, b] = all[b, a] = Table.And(all[a, b], reach[a][b]);
        }
        return all;
    }

    /// <summary>What each supply reaches, over supplies and components, when conductors are on only so.</summary>
    private Spread[] Reaches(Func<Source, Diagram> on)
    {
        var graph = new GuardedGraph(Table, supplies.Length + nets.Length);
        for (var a = 0; a < nets.Length; a++)
        for (var b = 0; b < a; b++)
            graph.Join(supplies.Length + a, supplies.Length + b, mesh.Joined(nets[a], nets[b]));
        foreach (var conductor in conductors)
            graph.Join(HubOf(conductor), NodeOf(conductor), on(conductor));
        var eliminated = new Elimination(Table, graph);
        return [.. supplies.Select((_, hub) => eliminated.Spread(KeyValuePair.Create(hub, Diagram.True)))];
    }

    private int HubOf(Source conductor) =>
        Array.FindIndex(supplies, s => s.SupplyIndex == conductor.SupplyIndex);

    private int NodeOf(Source conductor) => supplies.Length + Array.IndexOf(nets, conductor.Net);

    /// <summary>The supplies of other angle references.</summary>
    private IEnumerable<int> Strangers(int hub) =>
        Enumerable
            .Range(0, supplies.Length)
            .Where(other => supplies[other].Supply.Group != supplies[hub].Supply.Group);
}
