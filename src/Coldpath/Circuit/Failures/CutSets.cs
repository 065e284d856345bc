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
    private readonly Lazy<bool> restsOnUncertain;

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
        var open = new Lazy<Diagram>(() => Open(behaviour));
        certain = new(() => Search(uncertainToo: false, !open.Value));
        possible = new(() => Search(uncertainToo: true, Diagram.True));
        restsOnUncertain = new(() => possible.Value.Phases.Any(phase => Table.Meet(phase.All, open.Value)));

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
        // What no assignment does needs no search; what certain moves reach is among what all do.
        if (!Table.Meet(hazard, Space.Domain) || !Table.Meet(hazard, possible.Value.States))
            return [];
        if (!restsOnUncertain.Value)
            return In(possible.Value, uncertain: false);
        return FailureSet.Minimal([
            .. In(certain.Value, uncertain: false),
            .. In(possible.Value, uncertain: true),
        ]);

        List<FailureSet> In(Found found, bool uncertain) =>
            Sets(behaviour, Table.And(hazard, found.States), found.Phases, uncertain);
    }

    /// <summary>The minimal sets among the failures that stand in states which searches in phases have reached.</summary>
    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="states">Reached in the last phase.</param>
    /// <param name="phases">Each from where the one before may end.</param>
    /// <param name="uncertainToo">Whether moves were made that an uncertain coil leaves open.</param>
    internal static IReadOnlyList<FailureSet> In(
        Behaviour behaviour,
        Diagram states,
        IReadOnlyList<Reach> phases,
        bool uncertainToo
    )
    {
        var within = uncertainToo ? Diagram.True : !Open(behaviour);
        return Sets(behaviour, behaviour.Table.And(states, within), phases, uncertainToo);
    }

    /// <summary>States in which an uncertain coil could move.</summary>
    private static Diagram Open(Behaviour behaviour) =>
        behaviour.Table.AnyOf(behaviour.Transitions.Select(t => t.Uncertain));

    private static List<FailureSet> Sets(
        Behaviour behaviour,
        Diagram reached,
        IReadOnlyList<Reach> phases,
        bool uncertain
    )
    {
        var (space, table) = (behaviour.Space, behaviour.Table);
        if (reached.IsFalse)
            return [];
        var levels = space.FailureVariables.ToDictionary(v => space.LevelsOf(v).Single());
        var others = space.Levels.Except(levels.Keys);
        return
        [
            .. new MinimalSets(table, table.Exists(reached, table.Cube(others)))
                .Cheapest(levels.Keys)
                .Select(set => Told([.. set.Select(level => levels[level]).Order()])),
        ];

        FailureSet Told(int[] members)
        {
            var states = table.And(reached, space.Failed(members));
            return new(
                behaviour,
                [.. members.Select(m => space.Variables[m])],
                states,
                uncertain,
                () => Phases.Story(behaviour, uncertain, states, [.. phases])
            );
        }
    }

    private sealed record Found(IReadOnlyList<Reach> Phases, Diagram States);
}
