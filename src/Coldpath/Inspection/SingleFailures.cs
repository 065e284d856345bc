using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What one failure alone does: starts a motor, or takes a stop or a trip its effect.</summary>
public sealed class SingleFailures
{
    private readonly Evidence evidence;
    private readonly Lazy<CutSets> any;
    private readonly Lazy<CutSets> unstarted;
    private readonly Dictionary<string, FailureSort> sorts;

    public SingleFailures(Evidence evidence)
    {
        this.evidence = evidence;
        any = new(() => new(Behaviour));
        unstarted = new(() => new(Behaviour, t => !IsStartCommand(t)));
        sorts = FailureSorts.Of(evidence.Failable);
    }

    /// <summary>What the panel can do while one part fails.</summary>
    public Behaviour Behaviour => evidence.Failing(1);

    private DiagramTable Table => Behaviour.Table;
    private IReadOnlyList<Variable> Variables => Behaviour.Space.Variables;

    public Variable Variable(FailureSet set) => Variables[set.Members[0]];

    public FailureSort Sort(FailureSet set) => sorts[Variable(set).Name];

    /// <summary>Each failure that starts the motor when nobody has given a command; none if it needs no failure to.</summary>
    public IEnumerable<FailureSet> Starting(Load motor) => Alone(unstarted.Value, Quiet(motor));

    /// <summary>Each failure with which the motor runs on for good while the control is operated.</summary>
    public IEnumerable<FailureSet> Defeating(NetlistDevice stop, Load motor) =>
        Alone(any.Value, Table.And(Quiet(motor), Stops.Operated(evidence, Behaviour, stop)));

    /// <summary>Each failure with which the motor runs on for good while the trip stands tripped.</summary>
    public IEnumerable<FailureSet> Defeating(Protection trip, Load motor)
    {
        var variable = Behaviour.Space.IndexOf(trip.Variable);
        var reset = Behaviour.Space.Is(variable, Behaviour.Space.Rest[variable]);
        return Alone(any.Value, Table.Except(Quiet(motor), reset));
    }

    /// <summary>Each failure with which the motor carries current, in whatever way, with every stop operated.</summary>
    public IEnumerable<FailureSet> LeftConducting(Load motor) =>
        Alone(
            any.Value,
            Table.AllOf(Behaviour.Quiet, Carrying(motor), Stops.AllOperated(evidence, Behaviour))
        );

    /// <summary>Each failure that leads to a short with no short-circuit device in the way.</summary>
    public IEnumerable<FailureSet> Unprotected() => Alone(any.Value, Behaviour.UnprotectedShort);

    /// <summary>
    /// Why this one failure should have been without effect: a claim of the description, or a device in series that was
    /// to drop; null when there is no reason.
    /// </summary>
    public string? Redundant(Load motor, NetlistDevice stop, FailureSet set)
    {
        var claims = evidence.Netlist.Intents.Any(i => i.Failures > 0 && i.Of == motor.Name);
        if (claims)
            return $"{motor.Name} is meant to stop even so";
        var part = Variable(set).Device;
        if (!IsOfPole(Variable(set)))
            return null;
        var other = evidence.Devices.Controllers.FirstOrDefault(tag =>
            tag != part && InEveryWay(tag, motor, set.States)
        );
        return other is null ? null : $"{other} in series does not drop either";
    }

    /// <summary>It keeps a main pole closed; of a control or an auxiliary contact nothing in series knows.</summary>
    private bool IsOfPole(Variable failure) =>
        evidence.Failable.Elements.Any(e =>
            e.Power && e.Device == failure.Device && Guards.Variables(e.Closed).Contains(failure.Name)
        );

    /// <summary>Without its poles the motor does not run in any of the states.</summary>
    private bool InEveryWay(string tag, Load motor, Diagram states)
    {
        var without = Behaviour.Network.Without(evidence.Devices.Poles(tag).Select(p => p.Id));
        return !Table.Meet(states, without.Runs(motor.Name));
    }

    private Diagram Carrying(Load motor) =>
        Table.Or(Behaviour.Network.Runs(motor.Name), Behaviour.Network.Abnormal(motor.Name));

    private Diagram Quiet(Load motor) => Table.And(Behaviour.Quiet, Behaviour.Network.Runs(motor.Name));

    private static IEnumerable<FailureSet> Alone(CutSets sets, Diagram hazard) =>
        sets.Of(hazard, most: int.MaxValue).Sets.Where(set => set.Members.Count == 1);

    /// <summary>A start or mode control moved away from rest.</summary>
    private bool IsStartCommand(Transition t) =>
        t.Cause == Cause.Operator
        && Variables[t.Variable] is { Device: { Length: > 0 } device } variable
        && evidence.Devices[device].Use is ControlUse.Start or ControlUse.Mode
        && variable.Values[t.To] != variable.Rest;
}
