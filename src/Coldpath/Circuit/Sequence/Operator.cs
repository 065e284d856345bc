using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Plays a panel state by state: one operation at a time, the circuit settling after each. Where several moves are
/// open the one declared first is made; uncertain ones are not.
/// </summary>
public sealed class Operator
{
    private readonly StateSpace space;
    private readonly Settling settling;
    private readonly Constraints constraints;
    private readonly IReadOnlyList<Transition> transitions;

    internal Operator(
        StateSpace space,
        Settling settling,
        Constraints constraints,
        IReadOnlyList<Transition> transitions
    )
    {
        this.space = space;
        this.settling = settling;
        this.constraints = constraints;
        this.transitions = transitions;
    }

    /// <summary>Lets the circuit settle.</summary>
    public Operated Settle(State state) => Settle(null, [], state, raced: false);

    /// <summary>
    /// Brings a variable to a value by its own moves, over the values between if need be, settling after each. A
    /// refused operation leaves the state as it was.
    /// </summary>
    public Operated Operate(State state, Operation operation)
    {
        if (Find(operation) is not var (variable, target))
            return new(operation, [], state, Refusal.Unknown);
        var route = new Route(transitions, variable, space.Variables[variable].Values.Count, [target]);
        var done = Settle(operation, [], state, raced: false);
        while (done.State[variable] != target)
        {
            var (move, refusal) = Next(done.State, route);
            if (move is null)
                return new(operation, [], state, refusal);

            done = Settle(operation, [.. done.Steps, Made(move, done.State)], done.Raced);
            if (route.From(done.State[variable]) > route.From(move.To))
                return new(operation, [], state, Refusal.Undone);
        }
        return done;
    }

    private (int Variable, int Value)? Find(Operation operation)
    {
        foreach (
            var (index, variable) in space.Variables.Index().Where(v => v.Item.Name == operation.Variable)
        )
        foreach (var (value, _) in variable.Values.Index().Where(v => v.Item == operation.Value))
            return (index, value);
        return null;
    }

    private static Step Made(Transition move, State state) => new(move, state.With(move.Variable, move.To));

    private Operated Settle(Operation? asked, IReadOnlyList<Step> steps, bool raced) =>
        Settle(asked, steps, steps[^1].After, raced);

    private Operated Settle(Operation? asked, IReadOnlyList<Step> steps, State state, bool raced)
    {
        var followed = WayToSettled(state);
        raced |= followed.Count > 0 && settling.Races(state);
        var end = followed.Count == 0 ? state : followed[^1].After;
        return new(asked, [.. steps, .. followed], end, null)
        {
            Raced = raced,
            Chatters = space.Holds(settling.Chatter, end),
        };
    }

    /// <summary>Depth first, since the moves declared first may run in a circle for ever.</summary>
    private IReadOnlyList<Step> WayToSettled(State start)
    {
        var state = start;
        var way = new Stack<Step>();
        var seen = new HashSet<State> { start };
        while (!space.Holds(settling.Settled, state))
        {
            var step = transitions
                .Where(t => t.IsUrgent && t.From == state[t.Variable] && space.Holds(t.Certain, state))
                .Select(t => Made(t, state))
                .FirstOrDefault(s => seen.Add(s.After));
            if (step is not null)
                way.Push(step);
            else
                way.Pop();
            state = way.TryPeek(out var last) ? last.After : start;
        }
        return [.. way.Reverse()];
    }

    private (Transition? Move, Refusal? Refusal) Next(State state, Route route)
    {
        var closer = route.Closer.Where(t => t.From == state[t.Variable]).ToArray();
        if (closer.Length == 0)
            return (null, Refusal.NoWay);
        var move =
            closer.FirstOrDefault(t => space.Holds(t.Certain, state))
            ?? closer.FirstOrDefault(t => space.Holds(t.Uncertain, state) || space.Holds(t.Shorted, state));
        if (move is not null)
            return (move, null);
        var allowed = closer.Any(t => space.Holds(constraints.Allow(t.Variable, t.To), state));
        return (null, allowed ? Refusal.NotNow : Refusal.Interlocked);
    }
}
