using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// Which failures suffice: a set does when the hazard is reached while its members may happen and no others. A failure
/// never heals, so the failures that stand in a reached state are those that were needed at most.
/// </summary>
public sealed class CutSets
{
    private readonly Behaviour behaviour;

    /// <summary>Where no uncertain coil has moved and none could.</summary>
    private readonly Lazy<Found> certain;
    private readonly Lazy<Found> possible;

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    public CutSets(Behaviour behaviour)
        : this(behaviour, uncertainToo => behaviour.FromRest(uncertainToo)) { }

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="among">Moves that may be made; failures are made as ever.</param>
    public CutSets(Behaviour behaviour, Func<Transition, bool> among)
        : this(behaviour, uncertainToo => behaviour.ReachAtRest(among, uncertainToo)) { }

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="from">Reached states from which it goes on.</param>
    /// <param name="among">Moves that may be made from there; failures are made as ever.</param>
    public CutSets(Behaviour behaviour, Diagram from, Func<Transition, bool> among)
        : this(
            behaviour,
            uncertainToo => behaviour.FromRest(uncertainToo),
            (begun, uncertainToo) => behaviour.ReachFrom(begun, uncertainToo, among),
            from
        ) { }

    private CutSets(
        Behaviour behaviour,
        Func<bool, Reach> first,
        Func<Diagram, bool, Reach>? then = null,
        Diagram? from = null
    )
    {
        this.behaviour = behaviour;
        var settled = new Lazy<Diagram>(() => !Table.AnyOf(behaviour.Transitions.Select(t => t.Uncertain)));
        certain = new(() => Search(uncertainToo: false, settled.Value));
        possible = new(() => Search(uncertainToo: true, Diagram.True));

        Found Search(bool uncertainToo, Diagram within)
        {
            var reach = first(uncertainToo);
            if (then is null)
                return new([reach], Table.And(reach.All, within));
            var later = then(Table.AllOf(reach.All, from!.Value, within), uncertainToo);
            return new([reach, later], Table.And(later.All, within));
        }
    }

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    /// <summary>
    /// The minimal sets for one of the states to be reached: first those that surely suffice, then those that do only
    /// if an uncertain coil pulls or holds and contain none of the first.
    /// </summary>
    public IReadOnlyList<FailureSet> Of(Diagram hazard)
    {
        if (!Table.Meet(hazard, behaviour.Reachable))
            return [];
        var sure = Sets(Table.And(hazard, certain.Value.States), certain.Value, uncertain: false);
        if (!behaviour.RestsOnUncertain)
            return sure;
        var open = Sets(Table.And(hazard, possible.Value.States), possible.Value, uncertain: true);
        return FailureSet.Minimal([.. sure, .. open]);
    }

    private List<FailureSet> Sets(Diagram reached, Found found, bool uncertain)
    {
        if (reached.IsFalse)
            return [];
        var levels = Space.FailureVariables.ToDictionary(v => Space.LevelsOf(v).Single());
        var others = Space.Levels.Except(levels.Keys);
        return
        [
            .. new MinimalSets(Table, Table.Exists(reached, Table.Cube(others)))
                .Cheapest(levels.Keys)
                .Select(set => Told([.. set.Select(level => levels[level]).Order()])),
        ];

        FailureSet Told(int[] members)
        {
            var states = Table.And(reached, Space.Failed(members));
            var story = Phases.Story(behaviour, uncertain, states, [.. found.Phases]);
            return new(behaviour, [.. members.Select(m => Space.Variables[m])], states, story);
        }
    }

    private sealed record Found(IReadOnlyList<Reach> Phases, Diagram States);
}
