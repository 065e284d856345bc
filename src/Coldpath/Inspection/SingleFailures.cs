using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Inspection;

/// <summary>What one failure alone does: starts a motor, or takes a stop or a trip its effect.</summary>
public sealed class SingleFailures
{
    private readonly Evidence evidence;
    private readonly Part sound;
    private readonly Lazy<IReadOnlyList<(FailureSort Sort, Part Part)>> parts;
    private readonly Dictionary<string, Part> judged = [];

    public SingleFailures(Evidence evidence)
    {
        this.evidence = evidence;
        sound = new(() => evidence.Behaviour, MayFollow);
        parts = new(() =>
            [.. evidence.FailingSingly.Select(s => (s.Sort, new Part(() => s.Behaviour, MayFollow)))]
        );
    }

    /// <summary>Each failure that starts the motor when nobody has given a command; none if it needs no failure to.</summary>
    /// <param name="motor">Which.</param>
    /// <param name="sorts">Failures of these sorts; of all when none is given.</param>
    public IEnumerable<FailureSet> Starting(Load motor, params FailureSort[] sorts) =>
        Alone(sorts, $"starting {motor.Name}", part => part.Unstarted.Of(Quiet(part.Behaviour, motor)));

    /// <summary>
    /// Each failure with which the motor, having stopped, starts again while every start control is at rest: a stop is
    /// let go, or an isolator closed.
    /// </summary>
    /// <inheritdoc cref="Starting"/>
    public IEnumerable<FailureSet> Restarting(Load motor, params FailureSort[] sorts) =>
        Alone(
            sorts,
            $"restarting {motor.Name}",
            part =>
            {
                var runs = part.Behaviour.Network.Runs(motor.Name);
                var idle = part.Behaviour.Table.AllOf([
                    part.Behaviour.Quiet,
                    !runs,
                    .. AtRest(part.Behaviour.Space),
                ]);
                return new CutSets(part.Behaviour, idle, part.MayFollow).Of(Quiet(part.Behaviour, motor));
            }
        );

    /// <summary>Each failure with which the motor runs on for good while the control is operated.</summary>
    /// <param name="stop">The control.</param>
    /// <param name="motor">Which.</param>
    /// <param name="sorts">Failures of these sorts; of all when none is given.</param>
    public IEnumerable<FailureSet> Defeating(NetlistDevice stop, Load motor, params FailureSort[] sorts) =>
        Alone(
            sorts,
            $"{stop.Tag} pressed, {motor.Name}",
            part =>
                part.Any.Of(
                    part.Behaviour.Table.And(
                        Quiet(part.Behaviour, motor),
                        Stops.Operated(evidence, part.Behaviour, stop)
                    )
                )
        );

    /// <summary>Each failure with which the motor runs on for good while the trip stands tripped.</summary>
    /// <param name="trip">The trip.</param>
    /// <param name="motor">Which.</param>
    /// <param name="sorts">Failures of these sorts; of all when none is given.</param>
    public IEnumerable<FailureSet> Defeating(Protection trip, Load motor, params FailureSort[] sorts) =>
        Alone(
            sorts,
            $"{trip.Variable} tripped, {motor.Name}",
            part =>
            {
                var space = part.Behaviour.Space;
                var variable = space.IndexOf(trip.Variable);
                var reset = space.Is(variable, space.Rest[variable]);
                return part.Any.Of(space.Table.Except(Quiet(part.Behaviour, motor), reset));
            }
        );

    /// <summary>Each failure with which a conductor reaches the motor, not through leakage, with every stop operated.</summary>
    /// <inheritdoc cref="Starting"/>
    public IEnumerable<FailureSet> LeftLive(Load motor, params FailureSort[] sorts) =>
        Alone(
            sorts,
            $"left live {motor.Name}",
            part =>
                part.Any.Of(
                    part.Behaviour.Table.AllOf(
                        part.Behaviour.Quiet,
                        Reached(part.Behaviour, motor),
                        Stops.AllOperated(evidence, part.Behaviour)
                    )
                )
        );

    /// <summary>Each failure that leads to a short with no short-circuit device in the way.</summary>
    /// <param name="sorts">Failures of these sorts; of all when none is given.</param>
    public IEnumerable<FailureSet> Unprotected(params FailureSort[] sorts) =>
        Alone(sorts, "unprotected", part => part.Any.Of(part.Behaviour.UnprotectedShort));

    /// <summary>
    /// Why this one failure should have left the stop its effect: a claim of the description, or a device in series that
    /// was to drop; null when there is no reason.
    /// </summary>
    public string? Redundant(Load motor, NetlistDevice stop, FailureSet set)
    {
        if (IsClaimed(motor, stop))
            return $"{motor.Name} is meant to stop by {stop.Tag} even so";
        if (!IsOfPole(set) || ChangesOver(set.Members[0].Device))
            return null;
        var other = evidence.Devices.Controllers.FirstOrDefault(tag =>
            tag != set.Members[0].Device && IsInEveryWay(tag, motor, set)
        );
        return other is null ? null : $"{other} in series does not drop either";
    }

    /// <summary>A line of the description counts on the stop's effect on the motor in spite of a failure.</summary>
    private bool IsClaimed(Load motor, NetlistDevice stop)
    {
        var positions = evidence.Devices.Variables(stop.Tag).Select(v => v.Name).ToHashSet();
        return evidence.Netlist.Intents.Any(i =>
            i.Failures > 0 && SpeaksOf(i, motor) && NamedIn(i).Any(positions.Contains)
        );
    }

    private static IEnumerable<string> NamedIn(Intent intent) =>
        intent.By.Select(o => o.Variable).Concat(Guards.Variables(intent.When));

    /// <summary>One of a change-over pair chooses a supply; what follows it in series is not there to back it up.</summary>
    private bool ChangesOver(string device) =>
        evidence.Netlist.Pairs.Any(p => p.Kind == "change-over" && p.Devices.Contains(device));

    private static bool SpeaksOf(Intent intent, Load motor) =>
        intent.Of == motor.Name || Guards.Names(intent.When).Contains(motor.Name);

    /// <summary>It keeps a main pole closed; of a control or an auxiliary contact nothing in series knows.</summary>
    private static bool IsOfPole(FailureSet set) =>
        set.Behaviour.Netlist.Elements.Any(e =>
            e.Power
            && e.Device == set.Members[0].Device
            && Guards.Variables(e.Closed).Any(v => v == set.Members[0].Name || Hinders(set, v))
        );

    /// <summary>The failure keeps the variable, an armature, from dropping.</summary>
    private static bool Hinders(FailureSet set, string variable) =>
        set.Behaviour.Space.Variables.Any(v =>
            v.Name == variable
            && v.Kind == VariableKind.Armature
            && v.Moves.Any(m => m.To == v.Rest && Guards.Variables(m.When).Contains(set.Members[0].Name))
        );

    /// <summary>Without its poles the motor does not run in any of the states.</summary>
    private bool IsInEveryWay(string tag, Load motor, FailureSet set)
    {
        var without = set.Behaviour.Network.Without(evidence.Devices.Poles(tag).Select(p => p.Id));
        return !set.Behaviour.Table.Meet(set.States, without.Runs(motor.Name));
    }

    private Diagram Reached(Behaviour behaviour, Load motor) =>
        behaviour.Table.AnyOf(
            evidence
                .Netlist.Loads.First(l => l.Name == motor.Name)
                .Terminals.Select(net => behaviour.Network.Live(net, LiveBy.Solid))
        );

    private static Diagram Quiet(Behaviour behaviour, Load motor)
    {
        var runs = behaviour.Table.And(behaviour.Network.Runs(motor.Name), behaviour.Space.Domain);
        // With a pole gone it does not run at all: then nothing more has to be known.
        return MayFail(behaviour, runs) ? behaviour.Table.And(behaviour.Quiet, runs) : Diagram.False;
    }

    /// <summary>In some of the states a failure stands; in a panel without failures any will do.</summary>
    private static bool MayFail(Behaviour behaviour, Diagram states) =>
        behaviour.Space.Failures is > 0
            ? !behaviour.Table.Except(states, behaviour.Space.Failed()).IsFalse
            : !states.IsFalse;

    /// <summary>
    /// Of all searches the sets of one; none when it comes about with nothing failed. Where an uncertain coil decides,
    /// the solver is asked.
    /// </summary>
    private IEnumerable<FailureSet> Alone(
        FailureSort[] sorts,
        string question,
        Func<Part, IReadOnlyList<FailureSet>> sets
    ) =>
        sound.Ask(question, sets).Any(set => !set.Uncertain)
            ? []
            : FailureSet
                .Minimal(
                    parts
                        .Value.Where(p => sorts.Length == 0 || sorts.Contains(p.Sort))
                        .SelectMany(p => p.Part.Ask(question, sets))
                )
                .Where(set => set.Members.Count == 1)
                .SelectMany(set =>
                    set.Uncertain ? Judged(set).Ask(question, sets).Where(s => s.Members.Count == 1) : [set]
                );

    private Part Judged(FailureSet set)
    {
        var name = set.Members[0].Name;
        if (!judged.TryGetValue(name, out var part))
        {
            part = new(() => evidence.Judged([name]), MayFollow);
            judged.Add(name, part);
        }
        return part;
    }

    private Func<Transition, bool> MayFollow(Behaviour behaviour) =>
        t => !IsStartCommand(behaviour.Space.Variables, t);

    /// <summary>The start and mode controls at rest, and every supply there: the motor stands because it was stopped.</summary>
    private IEnumerable<Diagram> AtRest(StateSpace space) =>
        space
            .Variables.Index()
            .Where(v =>
                evidence.IsPresence(v.Item)
                || (v.Item.Kind == VariableKind.Position && IsStart(v.Item.Device))
            )
            .Select(v => space.Is(v.Index, space.Rest[v.Index]));

    private bool IsStart(string device) =>
        device.Length > 0 && evidence.Devices[device].Use is ControlUse.Start or ControlUse.Mode;

    /// <summary>A start or mode control moved away from rest.</summary>
    private bool IsStartCommand(IReadOnlyList<Variable> variables, Transition t) =>
        t.Cause == Cause.Operator
        && IsStart(variables[t.Variable].Device)
        && variables[t.Variable].Values[t.To] != variables[t.Variable].Rest;

    /// <summary>One of the searches with what it reaches, and what it reaches without a start command.</summary>
    private sealed class Part
    {
        private readonly Lazy<Behaviour> behaviour;
        private readonly Lazy<CutSets> any;
        private readonly Lazy<CutSets> unstarted;
        private readonly Lazy<Func<Transition, bool>> mayFollow;
        private readonly Dictionary<string, IReadOnlyList<FailureSet>> asked = [];

        public Part(Func<Behaviour> search, Func<Behaviour, Func<Transition, bool>> unstarting)
        {
            behaviour = new(search);
            mayFollow = new(() => unstarting(Behaviour));
            any = new(() => new(Behaviour));
            unstarted = new(() => new(Behaviour, MayFollow));
        }

        public Behaviour Behaviour => behaviour.Value;
        public CutSets Any => any.Value;
        public CutSets Unstarted => unstarted.Value;
        public Func<Transition, bool> MayFollow => mayFollow.Value;

        /// <summary>The answer to a question that several checks ask.</summary>
        public IReadOnlyList<FailureSet> Ask(string question, Func<Part, IReadOnlyList<FailureSet>> sets)
        {
            if (!asked.TryGetValue(question, out var answer))
                asked.Add(question, answer = sets(this));
            return answer;
        }
    }
}
