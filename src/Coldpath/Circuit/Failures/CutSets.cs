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
    private readonly StateSpace space;
    private readonly Diagram reachable;
    private readonly Func<Diagram, Story> story;

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    public CutSets(Behaviour behaviour)
    {
        space = behaviour.Space;
        reachable = behaviour.Reachable;
        story = target => behaviour.ShortestTo(target)!;
    }

    /// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
    /// <param name="among">Moves that may be made; failures are made as ever.</param>
    public CutSets(Behaviour behaviour, Func<Transition, bool> among)
    {
        space = behaviour.Space;
        var reach = behaviour.ReachAtRest(among);
        var finder = new Lazy<StoryFinder>(() => new(space, reach));
        reachable = reach.All;
        story = target =>
        {
            var (start, steps) = finder.Value.Shortest(target)!.Value;
            return new(space.Variables, start, steps, behaviour.RestsOnUncertain);
        };
    }

    private DiagramTable Table => space.Table;

    /// <summary>The minimal sets for one of the states to be reached, the best <paramref name="most"/> with stories.</summary>
    public SufficientFailures Of(Diagram hazard, int most = 20)
    {
        var reached = Table.And(hazard, reachable);
        var levels = space.FailureVariables.ToDictionary(v => space.LevelsOf(v).Single());
        var others = space.Levels.Except(levels.Keys);
        var family = Table.Minimal(Table.Exists(reached, Table.Cube(others)), levels.Keys);
        var sets = Table
            .Sets(family, levels.Keys)
            .Take(most)
            .Select(set => Told([.. set.Select(level => levels[level]).Order()], reached));
        return new(Table.Count(family, [.. levels.Keys.Order()]), [.. sets]);
    }

    private FailureSet Told(int[] members, Diagram reached)
    {
        var states = Table.And(reached, space.Failed(members));
        return new(members, states, story(states));
    }
}
