using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>How the circuit settles from every assignment, reachable or not, by its certain urgent moves.</summary>
public sealed class Settling
{
    private readonly StateSpace space;
    private readonly Relation urgent;
    private readonly Relation settle;
    private readonly Bottoms bottoms;
    private readonly Lazy<Relation> delays;
    private readonly Lazy<Diagram> race;
    private readonly Lazy<Diagram> standing;

    internal Settling(StateSpace space, IReadOnlyList<Transition> transitions)
    {
        this.space = space;
        urgent = new Relation(space, Certain(transitions.Where(t => t.IsUrgent)));
        settle = new Relation(space, Certain(transitions.Where(t => t.Cause == Cause.Settle)));
        bottoms = new Bottoms(space, urgent, space.Domain);
        delays = new(() =>
            new Relation(space, Certain(transitions.Where(t => t.Cause == Cause.Delay))).From(Settled)
        );
        race = new(FindRace);
        standing = new(() => new Bottoms(space, settle, space.Domain).All);
    }

    /// <summary>States in which nothing more comes by itself.</summary>
    public Diagram Steady => bottoms.Steady;

    /// <summary>States that the circuit runs through again and again without ever settling.</summary>
    public Diagram Chatter => bottoms.Chatter;

    /// <summary>States in a bottom component: steady or chattering.</summary>
    public Diagram Settled => bottoms.All;

    /// <summary>States from which certain urgent moves lead to one of these, those included.</summary>
    public Diagram Before(Diagram states) => urgent.Backward(states);

    /// <summary>States from which settle moves lead to more than one bottom component, as the order falls.</summary>
    public Diagram Race => race.Value;

    /// <summary>States in a bottom component when short-circuit devices are left out: what lasts without them.</summary>
    public Diagram Standing => standing.Value;

    /// <summary>Where certain urgent moves lead from the states, those included.</summary>
    public Diagram After(Diagram states) => urgent.Forward(states);

    /// <summary>Of some states that no move leaves, those from which settle moves lead to a settled one of these.</summary>
    public Diagram LeadingTo(Diagram states, Diagram among) =>
        settle.From(among).Backward(Table.AllOf(states, Settled, among));

    /// <summary>From this state settle moves lead to more than one bottom component.</summary>
    public bool Races(State state)
    {
        var ends = Table.And(settle.Forward(space.Of(state)), Settled);
        return space.First(ends) is { } one && !Table.Entails(ends, urgent.Forward(space.Of(one)));
    }

    internal Relation Urgent => urgent;

    /// <summary>Delays that elapse.</summary>
    internal Relation Delays => delays.Value;

    private DiagramTable Table => space.Table;

    /// <summary>Unsettled states from which the circuit can run in a circle before it settles.</summary>
    public Diagram TransientChatter()
    {
        var circling = Table.Except(space.Domain, Settled);
        Diagram before;
        do
        {
            before = circling;
            circling = Table.And(circling, urgent.Preimage(circling));
        } while (circling != before);
        return circling;
    }

    /// <summary>Two components differ in a bit of the state that stands for them, so a bit at a time will do.</summary>
    private Diagram FindRace()
    {
        var marks = Table.Or(bottoms.Steady, bottoms.ChatterPicks);
        return Table.AnyOf(urgent.Moving.SelectMany(space.LevelsOf).Select(FindRace));

        Diagram FindRace(int level) =>
            Table.And(
                settle.Backward(Components(Table.Literal(level, false))),
                settle.Backward(Components(Table.Literal(level, true)))
            );

        Diagram Components(Diagram marked) => urgent.Forward(Table.And(marks, marked));
    }

    private IEnumerable<Arc> Certain(IEnumerable<Transition> transitions) =>
        transitions.Select(t => Arc.Of(space, t, t.Certain));
}
