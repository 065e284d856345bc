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
    private readonly Diagram reachable;

    /// <summary>States in which an uncertain coil leaves open what comes next.</summary>
    private readonly Lazy<Diagram> open;

    private readonly Func<Diagram, Story> story;

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="from">Surely reached states from which it goes on; those in which an uncertain coil could move are left out.</param>
    /// <param name="among">Moves that may be made from there, no uncertain ones; failures are made as ever.</param>
    public CutSets(Behaviour behaviour, Diagram from, Func<Transition, bool> among)
    {
        this.behaviour = behaviour;
        open = OpenIn(behaviour);
        var fromRest = behaviour.FromRest(uncertainToo: false);
        var start = Table.Except(Table.And(from, fromRest.All), open.Value);
        var later = behaviour.ReachFrom(start, uncertainToo: false, among);
        reachable = later.All;
        story = target => Phases.Story(Space, throughUncertain: false, target, fromRest, later);
    }

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    public CutSets(Behaviour behaviour)
    {
        this.behaviour = behaviour;
        open = OpenIn(behaviour);
        reachable = behaviour.Reachable;
        story = target => behaviour.ShortestTo(target)!;
    }

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="among">Moves that may be made; failures are made as ever.</param>
    public CutSets(Behaviour behaviour, Func<Transition, bool> among)
    {
        this.behaviour = behaviour;
        open = OpenIn(behaviour);
        var reach = behaviour.ReachAtRest(among);
        var finder = new Lazy<StoryFinder>(() => new(Space, reach));
        reachable = reach.All;
        story = target =>
        {
            var (start, steps) = finder.Value.Shortest(target)!.Value;
            return new(Space.Variables, start, steps, behaviour.RestsOnUncertain);
        };
    }

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    /// <summary>The minimal sets for one of the states to be reached: fewest members first, then in declared order.</summary>
    public IReadOnlyList<FailureSet> Of(Diagram hazard)
    {
        var reached = Table.And(hazard, reachable);
        if (reached.IsFalse)
            return [];
        var levels = Space.FailureVariables.ToDictionary(v => Space.LevelsOf(v).Single());
        var others = Space.Levels.Except(levels.Keys);
        var family = Table.Minimal(Table.Exists(reached, Table.Cube(others)), levels.Keys);
        return
        [
            .. Table
                .Sets(family, levels.Keys)
                .Select(set => Told([.. set.Select(level => levels[level]).Order()], reached)),
        ];
    }

    private FailureSet Told(int[] members, Diagram reached)
    {
        var states = Table.And(reached, Space.Failed(members));
        var certain = Table.Except(states, open.Value);
        var told = story(certain.IsFalse ? states : certain);
        var uncertain = certain.IsFalse || told.ThroughUncertain;
        return new(behaviour, [.. members.Select(m => Space.Variables[m])], states, told, uncertain);
    }

    private static Lazy<Diagram> OpenIn(Behaviour behaviour) =>
        new(() => behaviour.Table.AnyOf(behaviour.Transitions.Select(t => t.Uncertain)));
}
