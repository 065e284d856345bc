using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Shortest stories: fewest made moves (operator, process, delay, trip, condition), then fewest that follow by
/// themselves, then the move declared first at the first place where two differ.
/// </summary>
internal sealed class StoryFinder(StateSpace space, Reach reach)
{
    /// <summary>What at most so many made moves reach, whatever follows; worked out as far as stories ask for.</summary>
    private readonly List<Diagram> rows = [reach.Following.Forward(reach.Start)];

    private DiagramTable Table => space.Table;

    /// <summary>The start state and the moves to the nearest state of the target; null when none is reached.</summary>
    public (State Start, IReadOnlyList<Step> Steps)? Shortest(Diagram target)
    {
        if (FewestMade(target) is not { } made)
            return null;
        var layers = new Layers(Table, reach, Useful(target, made));
        var followed = layers.FewestFollowed(target);
        var ways = layers.WaysTo(target, followed);
        var start = space.First(ways[0, 0])!;
        return (start, Steps(start, ways));
    }

    private int? FewestMade(Diagram target)
    {
        for (var made = 0; ; made++)
        {
            if (made == rows.Count)
            {
                var more = Table.Or(rows[^1], reach.Operating.Image(rows[^1]));
                if (more == rows[^1])
                    return null;
                rows.Add(reach.Following.Forward(more));
            }
            if (Table.Meet(rows[made], target))
                return made;
        }
    }

    /// <summary>For each number of made moves, the states from which the rest of them can still reach the target.</summary>
    private Diagram[] Useful(Diagram target, int made)
    {
        var useful = new Diagram[made + 1];
        var onward = target;
        for (var i = made; i >= 0; i--)
        {
            useful[i] = reach.Following.From(rows[i]).Backward(Table.And(onward, rows[i]));
            if (i > 0)
                onward = reach.Operating.From(rows[i - 1]).Preimage(useful[i]);
        }
        return useful;
    }

    private List<Step> Steps(State state, Diagram[,] ways)
    {
        var steps = new List<Step>();
        var (lastMade, lastFollowed) = (ways.GetLength(0) - 1, ways.GetLength(1) - 1);
        for (var (made, followed) = (0, 0); (made, followed) != (lastMade, lastFollowed); )
        {
            var step = reach
                .OpenAt(state)
                .Select(t => new Step(t, state.With(t.Variable, t.To)))
                .First(s => OnWay(s.Move.IsUrgent ? (made, followed + 1) : (made + 1, followed), s.After));
            steps.Add(step);
            state = step.After;
            _ = step.Move.IsUrgent ? followed++ : made++;
        }
        return steps;

        bool OnWay((int Made, int Followed) at, State after) =>
            at.Made <= lastMade
            && at.Followed <= lastFollowed
            && space.Holds(ways[at.Made, at.Followed], after);
    }
}
