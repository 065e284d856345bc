using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>What is live after some operations, each made when the circuit has settled after the one before.</summary>
public sealed class LiveQuestion(Evidence evidence)
{
    private readonly Narration narration = new(evidence.Netlist.Variables);

    /// <returns>The answer, or null and why an operation cannot be made.</returns>
    public (LiveAnswer? Answer, string? Problem) Ask(IReadOnlyList<Operation> operations, bool fromRest)
    {
        var behaviour = evidence.Behaviour;
        var made = new List<Operated>(fromRest ? [behaviour.Rest] : [behaviour.Rest, .. behaviour.Powering]);
        foreach (var operation in operations)
        {
            var next = behaviour.Operator.Operate(made[^1].State, operation);
            if (next.Refusal is { } refusal)
                return (null, Why(operation, refusal));
            made.Add(next);
        }
        return (Answer(made, fromRest), null);
    }

    private LiveAnswer Answer(List<Operated> made, bool fromRest)
    {
        var state = made[^1].State;
        var reaches = new Reaches(evidence, state);
        var coils = Doubts(made).ToArray();
        PointReach[] points =
        [
            .. evidence.Netlist.Points.Select(p => Doubted(reaches.Of(p), p, state, coils)),
        ];
        return new()
        {
            Panel = evidence.Panel.Name,
            Rules = evidence.Netlist.Rules,
            Complete = points.All(p => p.Reach != Reach.Unknown),
            Incomplete = [.. coils, .. points.Select(p => p.Doubt).OfType<string>().Distinct().Except(coils)],
            Start = fromRest ? "rest" : "powered",
            Steps = [.. made.SelectMany(Tell)],
            Settled = SettledAs(made[^1]),
            State = narration.Values(state),
            Points = points,
            Loads =
            [
                .. evidence
                    .Netlist.Loads.Where(IsShown)
                    .Select(l => KeyValuePair.Create(l.Name, reaches.Doing(l))),
            ],
            RestsOn = Doubtful.Parts(evidence.Panel),
            Assumed = evidence.Netlist.Assumed,
        };
    }

    /// <summary>
    /// A point is called dead only if it is so whatever an uncertain coil on the way did, and with every stored source
    /// charged: a charge comes and goes unseen.
    /// </summary>
    private PointReach Doubted(PointReach reach, Point point, State state, IReadOnlyList<string> coils)
    {
        if (reach.Reach != Reach.Dead)
            return reach;
        if (coils.Count > 0)
            return reach with { Reach = Reach.Unknown, Doubt = coils[0] };
        var store = evidence.Stores.FirstOrDefault(s => IsLive(point, Charged(state, s)));
        return store is null
            ? reach
            : reach with
            {
                Reach = Reach.Unknown,
                Doubt = $"{store.Name} may be charged: discharge it and measure",
            };
    }

    private bool IsLive(Point point, State state) =>
        evidence.Behaviour.Space.Holds(evidence.Network.Live(point.Net), state);

    /// <summary>The state with the store's condition away from rest.</summary>
    private State Charged(State state, Supply store)
    {
        var variable = evidence.Behaviour.Space.IndexOf(store.Store!.Variable);
        var values = evidence.Netlist.Variables[variable];
        var charged = values.Values.Index().First(v => v.Item != values.Rest).Index;
        return state.With(variable, charged);
    }

    private IEnumerable<StoryStep> Tell(Operated operated)
    {
        foreach (var step in narration.Tell(operated.Steps))
            yield return step;
        if (operated.Raced)
            yield return new(
                "the order in which these move decides: the first declared was taken to be first"
            );
        if (operated.Refusal is { } refusal)
            yield return new(Why(operated.Asked!, refusal));
    }

    private Settled SettledAs(Operated last) =>
        last.Chatters ? Settled.Chatter
        : evidence.Behaviour.Space.Holds(evidence.Behaviour.Shorted, last.State) ? Settled.Short
        : Settled.Steady;

    /// <summary>An uncertain coil on the way could have gone the other way.</summary>
    private IEnumerable<string> Doubts(IEnumerable<Operated> made)
    {
        var behaviour = evidence.Behaviour;
        var passed = made.SelectMany(o => o.Steps.Select(s => s.After).Append(o.State)).ToArray();
        return (
            from move in behaviour.Transitions
            let state = passed.FirstOrDefault(s => behaviour.Space.Holds(move.Uncertain, s))
            where state is not null
            let device = evidence.Netlist.Variables[move.Variable].Device
            group behaviour.Read(move, state) by device into readings
            select $"whether {readings.Key} moves is uncertain on the way: it was taken not to"
                + (readings.First() is { } reading ? $"; {VoltageWords.Of(reading, readings.Key)}" : "")
        );
    }

    private string Why(Operation operation, Refusal refusal) =>
        refusal switch
        {
            Refusal.Unknown => Unknown(operation),
            Refusal.NoWay =>
                $"{operation.Variable} cannot be brought to {operation.Value} by hand or by the process",
            Refusal.NotNow => $"{operation.Variable} cannot come to {operation.Value} in this state",
            Refusal.Interlocked => $"an interlock keeps {operation.Variable} from {operation.Value}",
            _ => $"{operation.Variable} does not stay at {operation.Value}",
        };

    private string Unknown(Operation operation)
    {
        var variable = evidence.Netlist.Variables.FirstOrDefault(v => v.Name == operation.Variable);
        return variable is null
            ? $"nothing here is called {operation.Variable}{Near(operation.Variable, evidence.Netlist.Variables.Select(v => v.Name))}"
            : $"{operation.Variable} has no state {operation.Value}: it has {Evidence.List(variable.Values.Where(v => !v.Contains('>', StringComparison.Ordinal)))}";
    }

    private static string Near(string name, IEnumerable<string> names) =>
        SpellChecker.Nearest(name, names) is { } near ? $"; did you mean {near}?" : "";

    private bool IsShown(Load load) => load.Modes.Count > 0;
}
