using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Everything a panel can do: its moves, how it settles, the states it can reach and the shortest stories to them.
/// Worked out when first asked for; a spent node budget shows as <see cref="DiagramLimitException"/>.
/// </summary>
public sealed class Behaviour
{
    private readonly Constraints constraints;
    private readonly Lazy<ShortCircuits> shorts;
    private readonly Sharpening solver;
    private readonly Behaviour? unjudged;
    private readonly Lazy<IReadOnlyList<Transition>> transitions;
    private readonly Lazy<Settling> settling;
    private readonly Lazy<Operator> operating;
    private readonly Lazy<Reach> sure;
    private readonly Lazy<Reach> possible;
    private readonly Lazy<StoryFinder> sureStories;
    private readonly Lazy<StoryFinder> possibleStories;
    private readonly Lazy<Operated> rest;
    private readonly Lazy<IReadOnlyList<Operated>> powering;
    private readonly Lazy<Diagram> reachableSettled;
    private readonly Lazy<Diagram> quiet;
    private readonly Lazy<IReadOnlyList<int>> uncertain;

    /// <param name="netlist">The panel.</param>
    /// <param name="table">Where the diagrams live.</param>
    /// <param name="failures">
    /// How many of its failures may happen from rest on; null: none does, and what is asked of single assignments holds
    /// for any that have.
    /// </param>
    public Behaviour(Netlist netlist, DiagramTable table, int? failures = null)
        : this(NetworkOf(netlist, new StateSpace(netlist, table, failures: failures))) { }

    private Behaviour(Network network)
        : this(network, new Constraints(network.Netlist, network.States)) { }

    private Behaviour(Network network, Constraints constraints)
        : this(network, constraints, new(() => new ShortCircuits(network.Netlist, network, constraints))) { }

    private Behaviour(Network network, Constraints constraints, Lazy<ShortCircuits> shorts)
        : this(
            network,
            constraints,
            shorts,
            new(() => new Transitions(network, constraints, shorts.Value).Of(network.Netlist))
        ) { }

    private Behaviour(
        Network network,
        Constraints constraints,
        Lazy<ShortCircuits> shorts,
        Lazy<IReadOnlyList<Transition>> transitions,
        Behaviour? unjudged = null
    )
    {
        this.unjudged = unjudged;
        this.transitions = transitions;
        Netlist = network.Netlist;
        Space = network.States;
        Network = network;
        this.constraints = constraints;
        this.shorts = shorts;
        solver = new(network, Diagram.True);
        settling = new(() => new Settling(Space, Transitions));
        operating = new(() => new Operator(Space, Settling, constraints, Transitions));
        reachableSettled = new(() => Table.And(Reachable, Settling.Settled));
        quiet = new(FindQuiet);
        uncertain = new(FindUncertain);
        rest = new(() => Operator.Settle(Space.Rest));
        powering = new(() => Power(Rest.State));
        sure = new(() => ReachFrom(AtRest, uncertainToo: false));
        possible = new(() => ReachFrom(AtRest, uncertainToo: true));
        sureStories = new(() => new StoryFinder(Space, sure.Value));
        possibleStories = new(() => new StoryFinder(Space, possible.Value));
    }

    public Netlist Netlist { get; }
    public StateSpace Space { get; }
    public Network Network { get; }

    /// <summary>Every move, those of short-circuit devices too, in declared order.</summary>
    public IReadOnlyList<Transition> Transitions => transitions.Value;
    public Settling Settling => settling.Value;
    public Operator Operator => operating.Value;

    /// <summary>From every variable at rest to the state the circuit settles in.</summary>
    public Operated Rest => rest.Value;

    /// <summary>The interlocks and keys that the state at rest breaks: there should be none.</summary>
    public IReadOnlyList<Constraint> BrokenAtRest =>
        [.. Netlist.Constraints.Where(c => !Space.Holds(Space.Guard(c.Holds), Rest.State))];

    /// <summary>The operations from rest to powered with what came of each; refused ones leave their variable.</summary>
    public IReadOnlyList<Operated> Powering => powering.Value;

    /// <summary>The powered state.</summary>
    public State Powered => Powering.Count == 0 ? Rest.State : Powering[^1].State;

    /// <summary>States that break no interlock.</summary>
    public Diagram Constrained => constraints.Hold;

    /// <summary>Settled states from which no delay elapses.</summary>
    public Diagram Quiet => quiet.Value;

    /// <summary>Every state reached from rest, passing ones included, uncertain coils taken either way.</summary>
    public Diagram Reachable => possible.Value.All;

    /// <summary>Those of them in which the circuit has settled.</summary>
    public Diagram ReachableSettled => reachableSettled.Value;

    /// <summary>The states reached without relying on an uncertain coil.</summary>
    public Diagram SurelyReachable => FromRest(uncertainToo: false).All;

    /// <summary>One of the states is among them; that set is built only if one is reached at all.</summary>
    public bool IsSurelyReached(Diagram states) =>
        Table.Meet(states, Reachable) && Table.Meet(states, SurelyReachable);

    /// <summary>States with a short.</summary>
    public Diagram Shorted => shorts.Value.Shorted;

    /// <summary>Shorted states in which no short-circuit device is in the way.</summary>
    public Diagram UnprotectedShort => shorts.Value.Unprotected;

    /// <summary>Shorts that would stand for ever if no device opened.</summary>
    public Diagram LastingShort => Table.And(Shorted, Settling.Standing);

    /// <summary>Some reachable state leaves it to an uncertain coil what comes next.</summary>
    public bool RestsOnUncertain => UncertainVariables.Count > 0;

    /// <summary>The variables whose coil is uncertain in some reachable state.</summary>
    public IReadOnlyList<int> UncertainVariables => uncertain.Value;

    /// <summary>The same panel before its uncertain coils were put to the solver; this one when they were not.</summary>
    public Behaviour Unjudged => unjudged ?? this;

    /// <summary>The variables of whose coil the solver decided something.</summary>
    public IReadOnlyList<int> JudgedVariables =>
        [
            .. Transitions
                .Zip(Unjudged.Transitions)
                .Where(t => t.First != t.Second)
                .Select(t => t.First.Variable)
                .Distinct(),
        ];

    internal DiagramTable Table => Space.Table;

    /// <summary>States in which the condition holds.</summary>
    public Diagram Of(Expression condition) =>
        Table.And(Network.Of(condition, e => e is Wiring.Quiet ? Quiet : null), Space.Domain);

    /// <summary>States in which the variable's armature wants a move that an interlock forbids.</summary>
    public Diagram Blocked(int variable) =>
        Table.AnyOf(Transitions.Where(t => t.Variable == variable).Select(t => t.Blocked));

    /// <summary>
    /// The same panel with uncertain coils put to the solver, as far as it can decide; this one when it decides nothing,
    /// null when the search was cut short.
    /// </summary>
    public Behaviour? Sharpened()
    {
        try
        {
            if (!RestsOnUncertain)
                return this;
            var sharpening = new Sharpening(Network, Table.Except(Reachable, Shorted));
            Transition[] sharpened = [.. Transitions.Select(sharpening.Of)];
            return sharpened.SequenceEqual(Transitions)
                ? this
                : new Behaviour(Network, constraints, shorts, new(sharpened), this);
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            return null;
        }
    }

    /// <summary>The voltage that decides the move in a state where its coil is uncertain or was; null for other moves.</summary>
    public CoilReading? Read(Transition move, State state) =>
        Space.Holds(Table.Or(move.Uncertain, move.Solved), state) ? solver.Read(move, state) : null;

    /// <summary>The voltage across the coil of an armature's move in any state; null for other moves.</summary>
    public CoilReading? ReadCoil(Transition move, State state) => solver.Read(move, state);

    /// <summary>The voltage across any load that is made for so many volts and needs so many.</summary>
    public CoilReading ReadAcross(string a, string b, double rated, double needed, State state) =>
        solver.Read(a, b, rated, needed, state);

    /// <summary>The shortest story to a state of the target; null when none is reachable.</summary>
    public Story? ShortestTo(Diagram target)
    {
        if (!Table.Meet(target, Reachable))
            return null;
        if (RestsOnUncertain && sureStories.Value.Shortest(target) is var (start, steps))
            return new Story(this, start, steps, ThroughUncertain: false);
        (start, steps) = possibleStories.Value.Shortest(target)!.Value;
        return new Story(this, start, steps, RestsOnUncertain);
    }

    internal Reach FromRest(bool uncertainToo) =>
        uncertainToo || !RestsOnUncertain ? possible.Value : sure.Value;

    internal Reach ReachFrom(Diagram start, bool uncertainToo, Func<Transition, bool>? among = null) =>
        new(Space, Settling, among is null ? Transitions : Transitions.Where(among), start, uncertainToo);

    /// <summary>What certain moves alone lead to: none that a short or an uncertain coil leaves open.</summary>
    internal Reach ReachSurelyFrom(Diagram start, Func<Transition, bool> among) =>
        new(
            Space,
            Settling,
            Transitions.Where(among).Select(t => t with { Shorted = Diagram.False }),
            start,
            uncertainToo: false
        );

    /// <summary>What is reached from rest by these moves alone.</summary>
    internal Reach ReachAtRest(Func<Transition, bool> among, bool uncertainToo) =>
        ReachFrom(AtRest, uncertainToo, among);

    /// <summary>Every settled state that rest may fall into: several when it is a race.</summary>
    private Diagram AtRest => Table.And(Settling.Urgent.Forward(Space.Of(Space.Rest)), Settling.Settled);

    /// <summary>What the panel can do with uncertain coils judged, where there is room for the search that this takes.</summary>
    /// <param name="netlist">The panel.</param>
    /// <param name="stop">Ends searches early.</param>
    /// <param name="failures">How many of its failures may happen; null: none.</param>
    public static Behaviour Judged(Netlist netlist, CancellationToken stop, int? failures = null) =>
        new Behaviour(netlist, new DiagramTable(cancellation: stop), failures).Sharpened()
        ?? new Behaviour(netlist, new DiagramTable(cancellation: stop), failures);

    private static Network NetworkOf(Netlist netlist, StateSpace space) =>
        new(netlist, space, within: space.Failures is { } most ? space.AtMostFailed(most) : null);

    private int[] FindUncertain() =>
        [.. Transitions.Where(t => Table.Meet(t.Uncertain, Reachable)).Select(t => t.Variable).Distinct()];

    private Diagram FindQuiet()
    {
        var delays = Transitions.Where(t => t.Cause == Cause.Delay).Select(t => t.Certain);
        return Table.Except(Settling.Settled, Table.AnyOf(delays));
    }

    private List<Operated> Power(State state)
    {
        var done = new List<Operated>();
        foreach (var operation in Netlist.Powered.Where(o => !StandsBy(o)))
        {
            done.Add(Operator.Operate(state, operation));
            state = done[^1].State;
        }
        return done;
    }

    private bool StandsBy(Operation operation) =>
        Netlist.Variables.Any(v => v.Name == operation.Variable && v.Standby);
}
