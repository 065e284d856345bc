using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>Answers what may be asked of a panel's behaviour; a search cut short answers "bounded".</summary>
/// <param name="behaviour">What the panel can do.</param>
/// <param name="whole">
/// The panel with its failures, for questions in which they are free, when the behaviour leaves them out; null when it
/// does not.
/// </param>
public sealed class Questions(Behaviour behaviour, Network? whole = null)
{
    private readonly Netlist netlist = behaviour.Netlist;
    private readonly Network whole = whole ?? behaviour.Network;

    private DiagramTable Table => behaviour.Table;

    /// <summary>
    /// The answer to an intent line. When it allows more failures than the behaviour does, only an answer that has a
    /// witness holds, and any other is bounded.
    /// </summary>
    public Verdict Answer(Intent intent)
    {
        var verdict = AnswerWithin(intent);
        var shown = verdict.Story is not null || verdict.Assignment is not null;
        return intent.Failures <= (behaviour.Space.Failures ?? 0) || shown ? verdict : new(Outcome.Bounded);
    }

    private Verdict AnswerWithin(Intent intent) =>
        intent.Form switch
        {
            IntentForm.Never => Never(intent.When, intent.Settled),
            IntentForm.Dead => Dead(intent.Of!, intent.When),
            IntentForm.Stops => Stops(intent.Of!, intent.By, intent.AtOnce),
            _ => Can(intent.Of!, intent.Via),
        };

    /// <summary>No reachable state satisfies the condition; with <paramref name="settled"/> no settled one.</summary>
    public Verdict Never(Expression condition, bool settled = false) =>
        Bounded(() =>
        {
            var among = settled ? behaviour.ReachableSettled : behaviour.Reachable;
            var target = Table.And(behaviour.Of(condition), among);
            if (behaviour.ShortestTo(target) is { } story)
                return new(Outcome.Refuted) { Story = story };
            var parts = condition is All all ? all.Terms.ToArray() : [];
            return new(parts.All(p => Table.Meet(behaviour.Of(p), among)) ? Outcome.Proved : Outcome.Vacuous);
        });

    /// <summary>
    /// Some reachable settled state has the load running, and there it would not with the power elements of any one of
    /// the devices taken out.
    /// </summary>
    public Verdict Can(string load, params IEnumerable<string> via) =>
        Bounded(() =>
        {
            var runs = Running(behaviour.Network, load);
            var needed = via.Select(device => Running(Without(device), load)).Select(without => !without);
            var target = Table.AllOf([behaviour.ReachableSettled, runs, .. needed]);
            var story = behaviour.ShortestTo(target);
            return new(story is null ? Outcome.Refuted : Outcome.Proved) { Story = story };
        });

    /// <summary>
    /// In every assignment that satisfies the condition, reachable or not, every terminal of the load or device is
    /// dead; failures of coils, wiring and controls left out but for those that the condition names.
    /// </summary>
    public Verdict Dead(string of, Expression condition) =>
        Bounded(() =>
        {
            var nets = Terminals.Of(netlist, of);
            var (space, table) = (whole.States, whole.States.Table);
            var freedom = Freedom.Of(space, Freedom.NamedIn(condition));
            var assignments = table.And(freedom, whole.Of(condition));
            foreach (var net in nets)
                if (space.First(table.And(assignments, whole.Live(net))) is { } state)
                    return new(Outcome.Refuted)
                    {
                        Assignment = state,
                        LiveNets = [.. nets.Where(n => space.Holds(whole.Live(n), state))],
                    };
            // A condition that only failures left out here bring about says nothing of what is live then.
            return new(!assignments.IsFalse && IsReached(condition) ? Outcome.Proved : Outcome.Vacuous);
        });

    /// <summary>Operating the control stops the load, and nothing but a new start command starts it again.</summary>
    /// <param name="load">What is to stop.</param>
    /// <param name="by">The control's variable with the values that count as operated.</param>
    /// <param name="atOnce">No delay may come between.</param>
    public Verdict Stops(string load, IReadOnlyList<Operation> by, bool atOnce = false) =>
        Bounded(() => new StopQuestion(behaviour, Running(behaviour.Network, load), by, atOnce).Answer());

    /// <summary>Some reachable state satisfies the condition, failures that it names taken as having occurred.</summary>
    private bool IsReached(Expression condition)
    {
        var failures = whole.Netlist.Variables.Where(v => v.Kind == VariableKind.Failure).Select(v => v.Name);
        return Freedom.NamedIn(condition).Intersect(failures).Any()
            ? whole.States.Table.Meet(whole.States.Domain, whole.Of(condition))
            : Table.Meet(behaviour.Of(condition), behaviour.Reachable);
    }

    private Diagram Running(Network network, string load) =>
        Table.AnyOf(Terminals.LoadsOf(netlist, load).Select(l => network.Of(new Runs(l.Name, Turning.Any))));

    private Network Without(string device) =>
        behaviour.Network.Without(
            netlist.Elements.Where(e => e.Power && e.Device == device).Select(e => e.Id)
        );

    private static Verdict Bounded(Func<Verdict> answer)
    {
        try
        {
            return answer();
        }
        catch (Exception cut) when (cut is DiagramLimitException or OperationCanceledException)
        {
            return new(Outcome.Bounded);
        }
    }
}
