using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>Answers what may be asked of a panel's behaviour; a search cut short answers "bounded".</summary>
public sealed class Questions(Behaviour behaviour)
{
    private readonly Netlist netlist = behaviour.Netlist;

    private DiagramTable Table => behaviour.Table;

    /// <summary>The answer to an intent line.</summary>
    public Verdict Answer(Intent intent) =>
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
    /// dead; failures of coils, wiring and controls left out.
    /// </summary>
    public Verdict Dead(string of, Expression condition) =>
        Bounded(() =>
        {
            var nets = Terminals.Of(netlist, of);
            var assignments = Table.And(Freedom.Of(behaviour.Space), behaviour.Of(condition));
            foreach (var net in nets)
                if (behaviour.Space.First(Table.And(assignments, behaviour.Network.Live(net))) is { } state)
                    return new(Outcome.Refuted)
                    {
                        Assignment = state,
                        LiveNets =
                        [
                            .. nets.Where(n => behaviour.Space.Holds(behaviour.Network.Live(n), state)),
                        ],
                    };
            var reached = Table.Meet(behaviour.Of(condition), behaviour.Reachable);
            return new(reached ? Outcome.Proved : Outcome.Vacuous);
        });

    /// <summary>Operating the control stops the load, and nothing but a new start command starts it again.</summary>
    /// <param name="load">What is to stop.</param>
    /// <param name="by">The control's variable with the values that count as operated.</param>
    /// <param name="atOnce">No delay may come between.</param>
    public Verdict Stops(string load, IReadOnlyList<Operation> by, bool atOnce = false) =>
        Bounded(() => new StopQuestion(behaviour, Running(behaviour.Network, load), by, atOnce).Answer());

    private Diagram Running(Network network, string load) =>
        Table.AnyOf(Terminals.LoadsOf(netlist, load).Select(l => network.Of(new Runs(l.Name, Turning.Any))));

    private Network Without(string device) =>
        new(
            netlist with
            {
                Elements = [.. netlist.Elements.Where(e => !(e.Power && e.Device == device))],
            },
            behaviour.Space
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
