using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// Responses: what shows before one move, or none, and what shows after it when the circuit has come to quiet again.
/// </summary>
internal sealed class Responses
{
    private readonly StateSpace space;
    private readonly Showing showing;
    private readonly Reach reach;
    private readonly Reach following;
    private readonly Diagram started;

    /// <param name="behaviour">What the panel can do.</param>
    /// <param name="showing">What is seen of it.</param>
    /// <param name="quiet">Where a response may begin and end.</param>
    /// <param name="uncertainToo">Whether moves are made that an uncertain coil or a short leaves open.</param>
    public Responses(Behaviour behaviour, Showing showing, Diagram quiet, bool uncertainToo)
    {
        this.showing = showing;
        space = behaviour.Space;
        reach = behaviour.FromRest(uncertainToo);
        started = Table.And(quiet, showing.WereSo);
        var moved = Table.Or(started, reach.Operating.Image(started));
        following = uncertainToo
            ? behaviour.ReachFrom(moved, uncertainToo, Follows)
            : behaviour.ReachSurelyFrom(moved, Follows);
        Ends = Table.AllOf(following.All, quiet, showing.AreSo);
    }

    /// <summary>The states that responses end in, with what showed before and shows after on its levels.</summary>
    public Diagram Ends { get; }

    private DiagramTable Table => space.Table;

    private static bool Follows(Transition t) => t.IsUrgent || t.Cause == Cause.Delay;

    /// <summary>Of some ends what shows before and after, and nothing else.</summary>
    public Diagram Seen(Diagram ends) =>
        Table.Exists(ends, Table.And(showing.Unseen, space.Bits(space.FailureVariables)));

    /// <summary>The states in which responses begin that come to one of the ends.</summary>
    public Diagram Begins(Diagram ends)
    {
        var after = Table.And(following.Start, following.StartsOf(ends));
        var before = Table.And(started, Table.Or(after, reach.Operating.Preimage(after)));
        return Table.Exists(before, showing.Levels);
    }

    /// <summary>One move at most, and what follows, from the state to one of the ends; the first of the shortest.</summary>
    public IReadOnlyList<Step> Steps(State from, Diagram ends)
    {
        var goal = Table.Exists(Table.And(ends, showing.BeforeOf(from)), showing.Levels);
        if (Follow(from, goal) is { } alone)
            return alone;
        return reach
            .OpenAt(from)
            .Where(move => !move.IsUrgent)
            .Select(move => new Step(move, from.With(move.Variable, move.To)))
            .Select(made => Follow(made.After, goal) is { } rest ? (Step[])[made, .. rest] : null)
            .OfType<Step[]>()
            .MinBy(steps => steps.Length)!;
    }

    private IReadOnlyList<Step>? Follow(State from, Diagram goal) =>
        new StoryFinder(space, following.With(space.Of(from))).Shortest(goal)?.Steps;
}
