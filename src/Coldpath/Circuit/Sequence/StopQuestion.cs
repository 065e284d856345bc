using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// "Stops X by S", phase by phase: S is operated from any settled state in which X runs; what follows by itself
/// follows; everything momentary is let go and then S, unless it stays where it is put; then anything may happen but
/// a start command. Uncertain coils are followed either way; what counts in the end are the certain moves.
/// </summary>
internal sealed class StopQuestion
{
    private readonly Behaviour behaviour;
    private readonly Diagram running;
    private readonly IReadOnlyList<Operation> by;
    private readonly bool atOnce;
    private readonly int control;
    private readonly int[] operatedValues;
    private readonly Diagram operated;
    private readonly bool uncertainToo;
    private readonly bool returns;

    public StopQuestion(Behaviour behaviour, Diagram running, IReadOnlyList<Operation> by, bool atOnce)
        : this(behaviour, running, by, atOnce, behaviour.RestsOnUncertain) { }

    /// <summary>A line's own question, with uncertain moves or without.</summary>
    public static StopQuestion Of(Behaviour behaviour, Intent line, bool uncertainToo)
    {
        var loads = Terminals.LoadsOf(behaviour.Netlist, line.Of!);
        var running = behaviour.Table.AnyOf(loads.Select(l => behaviour.Network.Runs(l.Name)));
        return new(behaviour, running, line.By, line.AtOnce, uncertainToo);
    }

    private StopQuestion(
        Behaviour behaviour,
        Diagram running,
        IReadOnlyList<Operation> by,
        bool atOnce,
        bool uncertainToo
    )
    {
        this.behaviour = behaviour;
        this.running = running;
        this.by = by;
        this.atOnce = atOnce;
        this.uncertainToo = uncertainToo;
        control = Space.IndexOf(by[0].Variable);
        if (by.Any(o => o.Variable != by[0].Variable))
            throw new ArgumentException("one control at a time", nameof(by));
        operatedValues = [.. by.Select(o => Space.IndexOfValue(o.Variable, o.Value))];
        operated = Table.AnyOf(operatedValues.Select(value => Space.Is(control, value)));
        returns = Space.Variables[control].Momentary || UseOf(control) == ControlUse.Stop;
    }

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;
    private Diagram Settled => behaviour.Settling.Settled;

    /// <summary>With uncertain moves too; then without, since a refutation that needs none is the better one.</summary>
    public Verdict Answer()
    {
        var possible = AnswerOnce();
        if (possible.Outcome != Outcome.Refuted || !behaviour.RestsOnUncertain)
            return possible;
        var sure = new StopQuestion(behaviour, running, by, atOnce, uncertainToo: false).AnswerOnce();
        return sure.Outcome == Outcome.Refuted ? sure : possible;
    }

    private Verdict AnswerOnce()
    {
        if (Table.AllOf(behaviour.FromRest(uncertainToo).All, Settled, running).IsFalse)
            return new(Outcome.Vacuous);
        return Refutations().FirstOrDefault() is { } refutation
            ? new(Outcome.Refuted)
            {
                StopFailure = refutation.Failure,
                Story = Phases.Story(behaviour, uncertainToo, refutation.States, [.. refutation.Phases]),
            }
            : new(Outcome.Proved);
    }

    /// <summary>Each way in which it does not hold, the plainest first.</summary>
    public IEnumerable<StopRefutation> Refutations() => Ways().Where(way => !way.States.IsFalse);

    private IEnumerable<StopRefutation> Ways()
    {
        var fromRest = behaviour.FromRest(uncertainToo);
        var runs = Table.AllOf(fromRest.All, Settled, running);
        var operate = Phase(runs, Towards(control, operatedValues), delays: false);
        var stuck = Table.Except(
            Table.Except(Table.And(operate.All, Settled), operated),
            operate.Operating.Sources
        );
        yield return new(StopFailure.CannotBeOperated, stuck, [fromRest, operate]);
        var follow = Phase(Table.And(operate.All, operated), [], !atOnce);
        yield return new(StopFailure.KeepsRunning, Still(follow), [fromRest, operate, follow]);
        var held = Table.AllOf(fromRest.All, behaviour.Quiet, operated, running);
        yield return new(StopFailure.RunsWhileOperated, held, [fromRest]);
        var release = Phase(Table.And(follow.All, Settled), Releases(), !atOnce);
        var letGo = Table.AllOf(release.All, Settled, Released());
        var back = Phase(letGo, returns ? Towards(control, [RestOf(control)]) : [], !atOnce);
        var after = returns ? Table.And(back.All, Space.Is(control, RestOf(control))) : back.All;
        var later = behaviour.ReachFrom(Table.And(after, Settled), uncertainToo, MayFollow);
        Reach[] all = [fromRest, operate, follow, release, back, later];
        yield return new(StopFailure.RunsAgain, Still(later), all);
    }

    private Reach Phase(Diagram start, IReadOnlyCollection<Transition> made, bool delays) =>
        behaviour.ReachFrom(
            start,
            uncertainToo,
            t => t.IsUrgent || (delays && t.Cause == Cause.Delay) || made.Contains(t)
        );

    /// <summary>Of what was reached, the bottom components in which the load runs.</summary>
    private Diagram Still(Reach reached)
    {
        var follows = behaviour.Settling.Urgent;
        if (!atOnce)
            follows = follows.Union(behaviour.Settling.Delays);
        return Table.And(new Bottoms(Space, follows, reached.All).All, running);
    }

    private Transition[] Towards(int variable, int[] values)
    {
        var route = new Route(
            behaviour.Transitions,
            variable,
            Space.Variables[variable].Values.Count,
            values
        );
        return [.. route.Closer.Where(t => t.Cause == Cause.Operator)];
    }

    private IEnumerable<int> OtherMomentary() =>
        Enumerable.Range(0, Space.Variables.Count).Where(v => v != control && Space.Variables[v].Momentary);

    private Transition[] Releases() => [.. OtherMomentary().SelectMany(v => Towards(v, [RestOf(v)]))];

    private Diagram Released() => Table.AllOf(OtherMomentary().Select(v => Space.Is(v, RestOf(v))));

    /// <summary>Anything but a start command, and the control stays if it is one that stays.</summary>
    private bool MayFollow(Transition t) => (returns || t.Variable != control) && !IsStartCommand(t);

    /// <summary>A start or mode control changed away from rest.</summary>
    private bool IsStartCommand(Transition t) =>
        t.Cause == Cause.Operator
        && UseOf(t.Variable) is ControlUse.Start or ControlUse.Mode
        && Destination(t) != Space.Variables[t.Variable].Rest;

    /// <summary>The position a move between two positions ("A>B") ends in.</summary>
    private string Destination(Transition t)
    {
        var value = Space.Variables[t.Variable].Values[t.To];
        return value[(value.LastIndexOf('>') + 1)..];
    }

    private int RestOf(int variable) => Space.Rest[variable];

    private ControlUse UseOf(int variable) =>
        behaviour
            .Netlist.Devices.Where(d => d.Tag == Space.Variables[variable].Device)
            .Select(d => d.Use)
            .FirstOrDefault();
}

/// <summary>A way in which a load is not stopped.</summary>
/// <param name="Failure">Which.</param>
/// <param name="States">Where it shows, in the last of the phases.</param>
/// <param name="Phases">The searches that lead there, each from where the one before may end.</param>
internal sealed record StopRefutation(StopFailure Failure, Diagram States, IReadOnlyList<Reach> Phases);
