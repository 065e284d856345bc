using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// Which single failures show themselves: those with a response that is none of the sound panel's. Where an uncertain
/// coil or a short leaves open what shows, or a load carries current and does not run, nothing is told: hidden is the
/// answer on the safe side.
/// </summary>
public sealed class Revealing
{
    private readonly Behaviour behaviour;
    private readonly Showing showing;

    /// <summary>Responses in which nothing is left open.</summary>
    private readonly Responses certain;

    /// <summary>What the sound panel may show before and after, uncertain coils taken either way.</summary>
    private readonly Diagram sound;

    /// <param name="behaviour">Of the panel with one failure or more allowed.</param>
    public Revealing(Behaviour behaviour)
    {
        this.behaviour = behaviour;
        showing = new(behaviour);
        var quiet = Table.And(behaviour.Reachable, behaviour.Quiet);
        var open = Table.AnyOf(behaviour.Transitions.Select(t => Table.Or(t.Uncertain, t.Shorted)));
        var possible = new Responses(
            behaviour,
            showing,
            Table.And(quiet, Space.Failed()),
            uncertainToo: true
        );
        sound = possible.Seen(Table.And(possible.Ends, Space.Failed()));
        var plain = Table.Except(Table.Except(quiet, open), showing.Doubtful);
        certain = new(behaviour, showing, plain, uncertainToo: false);
    }

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    public Revealed Of(Variable variable)
    {
        var failure = Space.IndexOf(variable.Name);
        if (!Table.Meet(behaviour.Reachable, Space.Code(failure, 1 - Space.Rest[failure])))
            return new(variable, Disclosure.Impossible);
        var ends = Table.And(certain.Ends, Space.Failed(failure));
        var telling = Table.Except(certain.Seen(ends), sound);
        return telling.IsFalse ? new(variable, Disclosure.Hidden) : Told(variable, Table.And(ends, telling));
    }

    private Revealed Told(Variable failure, Diagram ends)
    {
        var first = behaviour.ShortestTo(certain.Begins(ends))!;
        var rest = certain.Steps(first.End, ends);
        var story = new Story(behaviour, first.Start, [.. first.Steps, .. rest], first.ThroughUncertain);
        var signs = new Signs(Space, showing, sound).Of(first.End, rest);
        return new(failure, Disclosure.Revealed) { Story = story, Signs = signs };
    }
}
