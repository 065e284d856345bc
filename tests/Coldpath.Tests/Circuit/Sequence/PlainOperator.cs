using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>A panel played by the words alone: the sets of states are those of the plain search.</summary>
internal sealed class PlainOperator(Behaviour panel, PlainSearch search)
{
    private readonly HashSet<State> race = search.Race;

    /// <summary>Null for the refusal when the variable takes the value.</summary>
    public (Refusal? Refusal, State State, Transition[] Moves, bool Raced) Operate(
        State start,
        int variable,
        int target
    )
    {
        var moves = new List<Transition>();
        var raced = false;
        var state = Settle(start);
        while (state[variable] != target)
        {
            var closer = panel
                .Transitions.Where(t => t.Variable == variable && t.Cause != Cause.Short)
                .Where(t => t.From == state[variable] && Away(t.To) < Away(t.From))
                .ToArray();
            var move =
                closer.FirstOrDefault(t => panel.Space.Holds(t.Certain, state))
                ?? closer.FirstOrDefault(t =>
                    panel.Space.Holds(t.Uncertain, state) || panel.Space.Holds(t.Shorted, state)
                );
            if (move is null)
                return (Why(closer, state), start, [], false);
            moves.Add(move);
            state = Settle(state.With(variable, move.To));
            if (Away(state[variable]) > Away(move.To))
                return (Refusal.Undone, start, [], false);
        }
        return (null, state, [.. moves], raced);

        State Settle(State from)
        {
            var way = WayToSettled(from, [from])!;
            raced |= way.Count > 0 && race.Contains(from);
            moves.AddRange(way);
            return way.Aggregate(from, (s, t) => s.With(t.Variable, t.To));
        }

        int Away(int value) => Distance(variable, value, target);
    }

    private Refusal Why(Transition[] closer, State state) =>
        closer.Length == 0 ? Refusal.NoWay
        : closer.Any(t => IsAllowed(state.With(t.Variable, t.To))) ? Refusal.NotNow
        : Refusal.Interlocked;

    private bool IsAllowed(State state) =>
        panel.Netlist.Constraints.All(c => panel.Space.Holds(panel.Of(c.Holds), state));

    /// <summary>The move declared first, and from there on likewise; another where that leads to nothing new.</summary>
    private List<Transition>? WayToSettled(State state, HashSet<State> seen)
    {
        if (search.Settled.Contains(state))
            return [];
        foreach (var move in panel.Transitions)
            if (
                move.IsUrgent
                && panel.Space.Holds(move.Certain, state)
                && seen.Add(state.With(move.Variable, move.To))
                && WayToSettled(state.With(move.Variable, move.To), seen) is { } rest
            )
                return [move, .. rest];
        return null;
    }

    private int Distance(int variable, int from, int target)
    {
        var reached = new HashSet<int> { from };
        for (var steps = 0; ; steps++)
        {
            if (reached.Contains(target))
                return steps;
            var before = reached.Count;
            reached.UnionWith(
                panel
                    .Transitions.Where(t =>
                        t.Variable == variable && t.Cause != Cause.Short && reached.Contains(t.From)
                    )
                    .Select(t => t.To)
                    .ToArray()
            );
            if (reached.Count == before)
                return int.MaxValue;
        }
    }
}
