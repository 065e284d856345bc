using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A minimal set of controllers whose conducting makes a load run.</summary>
/// <param name="Load">The load.</param>
/// <param name="Devices">Tags in declared order.</param>
/// <param name="States">Reachable settled states in which these alone make it run.</param>
public sealed record Way(Load Load, IReadOnlyList<string> Devices, Diagram States);

/// <summary>The ways of feeding each load, feeders taken as closed.</summary>
public sealed class Ways(Evidence evidence)
{
    private readonly Dictionary<string, IReadOnlyList<Way>> known = [];

    public IReadOnlyList<Way> Of(Load load)
    {
        if (!known.TryGetValue(load.Name, out var ways))
        {
            ways = Find(load);
            known.Add(load.Name, ways);
        }
        return ways;
    }

    /// <summary>The load's ways that some of the states use, each with just those of its states.</summary>
    public IEnumerable<Way> Among(Load load, Diagram states) =>
        Of(load)
            .Select(way => way with { States = evidence.Table.And(way.States, states) })
            .Where(way => !way.States.IsFalse);

    /// <summary>
    /// The ways that must turn the load alike: all of them, but for a declared reversing pair those with its first
    /// device and those with its second.
    /// </summary>
    public IEnumerable<IReadOnlyList<Way>> ByDirection(Load load) =>
        Of(load).GroupBy(PairMembers).Select(g => (IReadOnlyList<Way>)[.. g]);

    private string PairMembers(Way way) =>
        string.Join(
            ' ',
            evidence
                .Netlist.Pairs.Where(p => p.Kind == "reversing")
                .SelectMany(p => p.Devices)
                .Where(way.Devices.Contains)
        );

    /// <summary>
    /// Each controller gets a condition "kept"; a way is a minimal set of kept controllers with which the load runs
    /// in some reachable settled state.
    /// </summary>
    private List<Way> Find(Load load)
    {
        var table = evidence.Table;
        var running = table.And(evidence.Settled, evidence.Runs(load));
        var controllers = Controllers(running);
        var kept = controllers.Select(tag => table.Variable(KeptLevel(tag))).ToArray();
        var only = controllers
            .Zip(kept)
            .SelectMany(p => evidence.Devices.Poles(p.First).Select(e => (e.Id, p.Second)))
            .ToDictionary(p => p.Id, p => p.Second);
        var network = new Circuit.Conduction.Network(evidence.Netlist, evidence.Behaviour.Space, only: only);
        var runs = table.And(evidence.Settled, network.Runs(load.Name));
        var enough = table.Exists(runs, table.Cube(evidence.Behaviour.Space.Levels));
        var levels = controllers.Select(KeptLevel).ToArray();
        return
        [
            .. new MinimalSets(table, enough)
                .Cheapest(levels)
                .Select(set => WayOf(load, controllers, runs, set)),
        ];
    }

    private Way WayOf(Load load, string[] controllers, Diagram runs, IReadOnlyList<int> set)
    {
        var chosen = controllers.Where(tag => set.Contains(KeptLevel(tag))).ToArray();
        var cube = controllers.Select(tag => KeyValuePair.Create(KeptLevel(tag), chosen.Contains(tag)));
        return new(load, chosen, evidence.Table.Restrict(runs, evidence.Table.Cube(cube)));
    }

    /// <summary>Controllers that conduct in some of the states; others can be no part of a way.</summary>
    private string[] Controllers(Diagram running) =>
        [
            .. evidence
                .Devices.All.Select(d => d.Tag)
                .Where(evidence.Devices.IsController)
                .Where(tag => evidence.Table.Meet(running, evidence.Devices.AnyClosed(tag))),
        ];

    private int KeptLevel(string tag)
    {
        var space = evidence.Behaviour.Space;
        return space.SpareLevel(space.IndexOf(evidence.Devices.Variables(tag).First().Name));
    }
}
