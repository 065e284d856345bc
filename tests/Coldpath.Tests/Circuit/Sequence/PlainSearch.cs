using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>
/// The moves followed state by state: the same transitions as the engine's, but no set of states is ever a diagram.
/// </summary>
internal sealed class PlainSearch
{
    private readonly Behaviour panel;
    private readonly Dictionary<State, (Transition Move, State To)[]> moves = [];
    private readonly HashSet<State> settled;

    public PlainSearch(Behaviour panel)
    {
        this.panel = panel;
        All = [.. States()];
        settled = Bottoms(s => Certain(s, t => t.IsUrgent));
        foreach (var state in All)
            moves[state] = [.. Open(state)];
    }

    public IReadOnlyList<State> All { get; }

    public IReadOnlySet<State> Settled => settled;

    public HashSet<State> Steady => [.. All.Where(s => !Certain(s, t => t.IsUrgent).Any())];

    public HashSet<State> Standing => Bottoms(s => Certain(s, t => t.Cause == Cause.Settle));

    /// <summary>From each of these, settle moves lead to states of two components that never reach each other.</summary>
    public HashSet<State> Race =>
        [
            .. All.Where(s =>
                Closure([s], x => Certain(x, t => t.Cause == Cause.Settle))
                    .Where(settled.Contains)
                    .Select(Component)
                    .Distinct()
                    .Count() > 1
            ),
        ];

    public HashSet<State> Reachable => Closure(Start, s => moves[s].Select(m => m.To));

    /// <summary>What these moves alone lead to, without any that an uncertain coil leaves open.</summary>
    public HashSet<State> SurelyFrom(IEnumerable<State> from, Func<Transition, bool> among) =>
        Closure(
            from,
            s =>
                moves[s]
                    .Where(m => among(m.Move) && !panel.Space.Holds(m.Move.Uncertain, s))
                    .Select(m => m.To)
        );

    /// <summary>What follows by itself and at once, those that it follows from included.</summary>
    public HashSet<State> Following(IEnumerable<State> from) =>
        Closure(from, s => Certain(s, t => t.IsUrgent));

    /// <summary>The states in which rest may come to be settled.</summary>
    public IEnumerable<State> AtRest => Start;

    /// <summary>
    /// The steps of the story that is least by made moves, then by following moves, then by the declared order of the
    /// first moves that differ; null when no target state is reached.
    /// </summary>
    public IReadOnlyList<Transition>? Shortest(Func<State, bool> target)
    {
        var best = new Dictionary<State, int[]>();
        var ways = new PriorityQueue<(State State, int[] Way), int[]>(Comparer<int[]>.Create(Compare));
        foreach (
            var start in Start.OrderBy(s => s.Values, Comparer<IReadOnlyList<int>>.Create(CompareValues))
        )
            ways.Enqueue((start, [0, 0]), [0, 0]);
        while (ways.TryDequeue(out var next, out _))
        {
            if (!best.TryAdd(next.State, next.Way))
                continue;
            if (target(next.State))
                return [.. next.Way.Skip(2).Select(i => panel.Transitions[i])];
            foreach (var (move, to) in moves[next.State])
                if (!best.ContainsKey(to))
                {
                    int[] way =
                    [
                        next.Way[0] + (move.IsUrgent ? 0 : 1),
                        next.Way[1] + (move.IsUrgent ? 1 : 0),
                        .. next.Way.Skip(2),
                        IndexOf(move),
                    ];
                    ways.Enqueue((to, way), way);
                }
        }
        return null;
    }

    private HashSet<State> Start =>
        [.. Closure([panel.Space.Rest], s => Certain(s, t => t.IsUrgent)).Where(settled.Contains)];

    private int IndexOf(Transition move) => panel.Transitions.Index().First(t => t.Item == move).Index;

    /// <summary>By cost; ways of one cost by the moves' declared order.</summary>
    private static int Compare(int[] a, int[] b) =>
        a.Zip(b, (x, y) => x.CompareTo(y)).FirstOrDefault(c => c != 0, a.Length.CompareTo(b.Length));

    private static int CompareValues(IReadOnlyList<int> a, IReadOnlyList<int> b) =>
        a.Zip(b, (x, y) => x.CompareTo(y)).FirstOrDefault(c => c != 0);

    private State Component(State s) =>
        Closure([s], x => Certain(x, t => t.IsUrgent)).MinBy(x => string.Join(",", x.Values))!;

    private IEnumerable<State> Certain(State state, Func<Transition, bool> which) =>
        panel
            .Transitions.Where(which)
            .Where(t => panel.Space.Holds(t.Certain, state))
            .Select(t => state.With(t.Variable, t.To));

    private IEnumerable<(Transition, State)> Open(State state) =>
        from t in panel.Transitions
        where t.Cause != Cause.Failure
        where
            panel.Space.Holds(t.Certain, state) && (t.IsUrgent || settled.Contains(state))
            || panel.Space.Holds(t.Uncertain, state)
            || panel.Space.Holds(t.Shorted, state)
        select (t, state.With(t.Variable, t.To));

    /// <summary>The states to which all that they lead to leads back.</summary>
    private HashSet<State> Bottoms(Func<State, IEnumerable<State>> next)
    {
        var reach = All.ToDictionary(s => s, s => Closure([s], next));
        return [.. All.Where(s => reach[s].All(to => reach[to].Contains(s)))];
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

    private IEnumerable<State> States()
    {
        IEnumerable<int[]> states =
        [
            [],
        ];
        foreach (var variable in panel.Space.Variables)
            states = states.SelectMany(s =>
                Enumerable.Range(0, variable.Values.Count).Select(v => (int[])[.. s, v])
            );
        return states.Select(s => new State(s));
    }
}
