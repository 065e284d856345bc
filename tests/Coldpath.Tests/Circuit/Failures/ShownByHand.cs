using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>
/// Whether one operation shows a failure, worked out state by state from the words: somebody sees controls, fuses,
/// trips, what the process and the supplies do, and what runs; makes one operation, or waits; and sees again when all is
/// quiet. A sound panel may answer in several ways; a failure shows itself by an answer that is none of these.
/// </summary>
internal sealed partial class ShownByHand
{
    private readonly Behaviour panel;
    private readonly Dictionary<State, (Transition Move, bool Sure, State To)[]> moves = [];
    private readonly Dictionary<State, bool> settled = [];
    private readonly HashSet<State> reached;
    private readonly HashSet<string> latches;
    private readonly HashSet<(string, string)> sound;

    /// <param name="panel">With one failure allowed.</param>
    public ShownByHand(Behaviour panel)
    {
        this.panel = panel;
        reached = Closure(Rest, s => Made(s, mayFail: true).Select(m => m.To));
        latches =
        [
            .. panel
                .Netlist.Elements.Where(e => e is { Type: ElementType.Contact, Power: true })
                .SelectMany(e => Guards.Variables(e.Closed)),
        ];
        sound =
        [
            .. reached
                .Where(s => !Failed(s).Any() && Quiet(s))
                .SelectMany(s =>
                    Made(s, mayFail: false)
                        .Select(m => m.To)
                        .Append(s)
                        .SelectMany(to => Ends(to, sure: false))
                        .SelectMany(to => from b in Looks(s) from a in Looks(to) select (b, a))
                ),
        ];
    }

    /// <summary>The failure stands in some reached state.</summary>
    public bool Happens(int failure) => reached.Any(s => Failed(s).Contains(failure));

    /// <summary>Some answer of the panel with this failure is none of the sound panel's; what nobody can tell is left out.</summary>
    public bool MayShow(int failure) => Answers(failure).Any(a => a.Ends.Any(Tells(a.Before, failure)));

    /// <summary>After some operation every answer is one.</summary>
    public bool SurelyShows(int failure) =>
        Answers(failure).Any(a => a.Ends.Count > 0 && a.Ends.All(Tells(a.Before, failure)));

    private Func<State, bool> Tells(State before, int failure) =>
        end =>
            Failed(end).SequenceEqual([failure])
            && !Open(end)
            && !sound.Contains((Looks(before).Single(), Looks(end).Single()));

    /// <summary>What comes of one operation, or of none, or of the failure itself.</summary>
    private IEnumerable<(State Before, HashSet<State> Ends)> Answers(int failure) =>
        from before in reached
        where Failed(before).All(f => f == failure) && Quiet(before) && !Open(before)
        from after in Made(before, mayFail: !Failed(before).Any())
            .Where(m => m.Sure)
            .Select(m => m.To)
            .Append(before)
        where Failed(after).SequenceEqual([failure])
        select (before, Ends(after, sure: true));

    /// <summary>The quiet states that a state comes to by what follows by itself, in time.</summary>
    private HashSet<State> Ends(State from, bool sure) =>
        [
            .. Closure(
                    [from],
                    s =>
                        Made(s, mayFail: false)
                            .Where(m => (m.Move.IsUrgent || m.Move.Cause == Cause.Delay) && (m.Sure || !sure))
                            .Select(m => m.To)
                )
                .Where(Quiet),
        ];

    private IEnumerable<State> Rest => Closure([panel.Space.Rest], s => Urgent(s)).Where(Settled);

    /// <summary>What the state shows; several looks when a load carries current and does not run.</summary>
    private IEnumerable<string> Looks(State state)
    {
        var parts = panel.Space.Variables.Zip(state.Values).Where(v => IsSeen(v.First)).Select(v => v.Second);
        IEnumerable<string> looks = [string.Join(' ', parts)];
        foreach (var load in panel.Netlist.Loads.Where(l => l.Modes.Count > 0))
            looks = [.. looks.SelectMany(look => LooksOf(load, state).Select(l => $"{look} {l}"))];
        return looks;
    }

    private char[] LooksOf(Load load, State state) =>
        panel.Space.Holds(panel.Network.Runs(load.Name), state) ? ['1']
        : panel.Space.Holds(panel.Network.AbnormalAndLive(load.Name), state) ? ['0', '1']
        : ['0'];

    private bool IsDoubtful(State state) => Looks(state).Count() > 1;

    /// <summary>A relay that keeps its own state tells it by an indicator; a contactor that latches does not.</summary>
    private bool IsSeen(Variable variable) =>
        variable.Kind switch
        {
            VariableKind.Position or VariableKind.Process or VariableKind.Supply or VariableKind.Trip => true,
            VariableKind.Cell => variable.Name == variable.Device && !latches.Contains(variable.Name),
            _ => false,
        };

    private IEnumerable<int> Failed(State state) =>
        panel.Space.FailureVariables.Where(v => state[v] != panel.Space.Rest[v]);

    /// <summary>It is left open whether something moves or runs.</summary>
    private bool Open(State state) => IsDoubtful(state) || Moves(state).Any(m => !m.Sure);

    private bool Quiet(State state) =>
        Settled(state) && !Moves(state).Any(m => m.Sure && m.Move.Cause == Cause.Delay);

    /// <summary>All that follows at once leads back.</summary>
    private bool Settled(State state)
    {
        if (!settled.TryGetValue(state, out var known))
            settled[state] = known = Closure([state], Urgent)
                .All(to => Closure([to], Urgent).Contains(state));
        return known;
    }

    private IEnumerable<State> Urgent(State state) =>
        Moves(state).Where(m => m.Sure && m.Move.IsUrgent).Select(m => m.To);

    /// <summary>The moves that can be made in the state.</summary>
    private IEnumerable<(Transition Move, bool Sure, State To)> Made(State state, bool mayFail) =>
        Moves(state)
            .Where(m => m.Move.Cause != Cause.Failure || mayFail && !Failed(state).Any())
            .Where(m => !m.Sure || m.Move.IsUrgent || Welds(m.Move) || Settled(state));

    private bool Welds(Transition move) =>
        move.Cause == Cause.Failure && panel.Space.Variables[move.Variable].Class == FailureClass.Contact;

    private (Transition Move, bool Sure, State To)[] Moves(State state)
    {
        if (!moves.TryGetValue(state, out var known))
            moves[state] = known = [.. Found(state)];
        return known;
    }

    private IEnumerable<(Transition, bool, State)> Found(State state)
    {
        foreach (var move in panel.Transitions)
        {
            var to = state.With(move.Variable, move.To);
            if (panel.Space.Holds(move.Certain, state))
                yield return (move, true, to);
            else if (panel.Space.Holds(move.Uncertain, state) || panel.Space.Holds(move.Shorted, state))
                yield return (move, false, to);
        }
    }

    private static HashSet<State> Closure(IEnumerable<State> from, Func<State, IEnumerable<State>> next)
    {
        var seen = new HashSet<State>(from);
        var open = new Stack<State>(seen);
        while (open.TryPop(out var state))
            foreach (var to in next(state))
                if (seen.Add(to))
                    open.Push(to);
        return seen;
    }
}
