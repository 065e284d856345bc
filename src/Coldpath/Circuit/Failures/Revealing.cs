using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// Which single failures show themselves. A response is what shows before and after one move, when the circuit has
/// come to quiet again; a failure is revealed if some response with it alone is none of the sound panel's.
/// </summary>
public sealed class Revealing
{
    private readonly Behaviour behaviour;
    private readonly Showing showing;
    private readonly Reach reach;

    /// <summary>What follows by itself after a move, delays too.</summary>
    private readonly Reach following;

    /// <summary>Quiet states with what showed in one before.</summary>
    private readonly Diagram started;

    /// <summary>What shows after a response, written to its levels, with all of the state.</summary>
    private readonly Diagram ended;

    /// <summary>The responses of the sound panel: what shows before and after.</summary>
    private readonly Diagram sound;

    /// <param name="behaviour">Of the panel with one failure or more allowed.</param>
    public Revealing(Behaviour behaviour)
    {
        this.behaviour = behaviour;
        showing = new(behaviour);
        reach = behaviour.FromRest(uncertainToo: true);
        var quiet = Table.And(behaviour.Reachable, behaviour.Quiet);
        started = Table.And(quiet, showing.Before);
        following = behaviour.ReachFrom(
            Table.Or(started, reach.Operating.Image(started)),
            uncertainToo: true,
            t => t.IsUrgent || t.Cause == Cause.Delay
        );
        ended = Table.AllOf(following.All, quiet, showing.After);
        sound = Responses([]);
    }

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    public Revealed Of(int failure)
    {
        if (!Table.Meet(behaviour.Reachable, Space.Code(failure, Failed(failure))))
            return new(failure, Disclosure.Impossible);
        var telling = Table.Except(Responses([failure]), sound);
        return telling.IsFalse ? new(failure, Disclosure.Hidden) : Told(failure, telling);
    }

    private Diagram Responses(int[] failed) =>
        Table.Exists(
            Table.And(ended, Happened(failed)),
            Table.And(showing.Unseen, Space.Bits(Space.FailureVariables))
        );

    private Diagram Happened(int[] failed) =>
        Table.AllOf(
            Space.FailureVariables.Select(v => Space.Code(v, failed.Contains(v) ? Failed(v) : Space.Rest[v]))
        );

    private int Failed(int variable) => 1 - Space.Rest[variable];

    private Revealed Told(int failure, Diagram telling)
    {
        var ends = Table.AllOf(ended, telling, Happened([failure]));
        var after = Table.And(following.Start, following.StartsOf(ends));
        var before = Table.And(started, Table.Or(after, reach.Operating.Preimage(after)));
        var first = behaviour.ShortestTo(Table.Exists(before, showing.Levels))!;
        var goal = Table.And(ends, showing.BeforeOf(first.End));
        var rest = Answer(first.End, Table.Exists(goal, showing.Levels));
        var story = new Story(
            first.Variables,
            first.Start,
            [.. first.Steps, .. rest],
            behaviour.RestsOnUncertain
        );
        return new(failure, Disclosure.Revealed) { Story = story, Signs = [.. Signs(first.End, story.End)] };
    }

    /// <summary>One move at most, and what follows, from the state to one of the goal.</summary>
    private IReadOnlyList<Step> Answer(State from, Diagram goal)
    {
        if (new StoryFinder(Space, following.With(Space.Of(from))).Shortest(goal) is var (_, alone))
            return alone;
        return reach
            .OpenAt(from)
            .Where(move => !move.IsUrgent)
            .Select(move => new Step(move, from.With(move.Variable, move.To)))
            .Select(made => After(made, goal))
            .OfType<IReadOnlyList<Step>>()
            .MinBy(steps => steps.Count)!;
    }

    private Step[]? After(Step made, Diagram goal) =>
        new StoryFinder(Space, following.With(Space.Of(made.After))).Shortest(goal) is var (_, steps)
            ? [made, .. steps]
            : null;

    /// <summary>Loads that do other than in every answer of the sound panel; else parts that moved besides.</summary>
    private IEnumerable<Sign> Signs(State before, State end)
    {
        var answers = Table.AllOf(sound, showing.BeforeOf(before), showing.SeenAs(end));
        if (answers.IsFalse)
            return showing.Changed(before, end).Select(v => new PartSign(v, end[v]));
        var loads = showing
            .Loads.Index()
            .Where(l => showing.RanAfter(l.Index, answers) == !showing.Runs(l.Index, end))
            .Select(l => new LoadSign(l.Item, showing.Runs(l.Index, end)))
            .ToArray();
        return loads.Length > 0
            ? loads
            : showing.Loads.Index().Select(l => new LoadSign(l.Item, showing.Runs(l.Index, end)));
    }
}
