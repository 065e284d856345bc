using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Shortest stories: fewest made moves, then fewest following ones, then the move declared first at the first place
/// where two differ.
/// </summary>
internal sealed class StoryFinder(StateSpace space, Reach reach)
{
    private readonly Layers layers = new(space.Table, reach);

    private DiagramTable Table => space.Table;

    /// <summary>The start state and the moves to the nearest state of the target; null when none is reached.</summary>
    public (State Start, IReadOnlyList<Step> Steps)? Shortest(Diagram target)
    {
        target = Table.And(target, reach.All);
        if (target.IsFalse)
            return null;
        var end = layers.First(target);
        var ways = Ways(target, end);
        var start = space.First(ways[0, 0])!;
        return (start, Steps(start, ways, end));
    }

    /// <summary>The states of each layer that lie on a shortest way to the target.</summary>
    private Diagram[,] Ways(Diagram target, (int Made, int Followed) end)
    {
        var ways = new Diagram[end.Made + 1, end.Followed + 1];
        for (var made = end.Made; made >= 0; made--)
        for (var followed = end.Followed; followed >= 0; followed--)
        {
            var onward =
                (made, followed) == end
                    ? target
                    : Table.Or(
                        made < end.Made ? reach.Operating.Preimage(ways[made + 1, followed]) : Diagram.False,
                        followed < end.Followed
                            ? reach.Following.Preimage(ways[made, followed + 1])
                            : Diagram.False
                    );
            ways[made, followed] = Table.And(layers[made, followed], onward);
        }
        return ways;
    }

    private List<Step> Steps(State state, Diagram[,] ways, (int Made, int Followed) end)
    {
        var steps = new List<Step>();
        for (var (made, followed) = (0, 0); (made, followed) != end; )
        {
            var step = reach
                .Transitions.Where(t => space.Holds(reach.SourceOf(t), state))
                .Select(t => new Step(t, state.With(t.Variable, t.To)))
                .First(s => OnWay(s.Move.IsUrgent ? (made, followed + 1) : (made + 1, followed), s.After));
            steps.Add(step);
            state = step.After;
            _ = step.Move.IsUrgent ? followed++ : made++;
        }
        return steps;

        bool OnWay((int Made, int Followed) at, State after) =>
            at.Made <= end.Made
            && at.Followed <= end.Followed
            && space.Holds(ways[at.Made, at.Followed], after);
    }
}
