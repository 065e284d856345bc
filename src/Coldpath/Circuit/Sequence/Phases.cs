using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>A search in phases, each with moves of its own, that starts where the one before may end.</summary>
internal static class Phases
{
    /// <summary>
    /// The story through all phases to the target in the last: the nearest state from which the rest can follow, and
    /// so on from there.
    /// </summary>
    public static Story Story(
        Behaviour behaviour,
        bool throughUncertain,
        Diagram target,
        params Reach[] phases
    )
    {
        var space = behaviour.Space;
        var targets = new Diagram[phases.Length];
        for (var i = phases.Length - 1; i >= 0; i--)
        {
            targets[i] = target;
            target = phases[i].StartsOf(target);
        }
        // Where rest is a race or chatters it is several states: the nearest of them begins the story.
        var (start, first) = new StoryFinder(space, phases[0].With(target)).Shortest(targets[0])!.Value;
        var steps = new List<Step>(first);
        foreach (var (phase, goal) in phases.Zip(targets).Skip(1))
        {
            var from = steps.Count == 0 ? start : steps[^1].After;
            steps.AddRange(new StoryFinder(space, phase.With(space.Of(from))).Shortest(goal)!.Value.Steps);
        }
        return new Story(behaviour, start, steps, throughUncertain);
    }
}
