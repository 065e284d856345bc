using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The states that moves lead to from a start: urgent and optional moves from any state, all others from settled
/// ones; contacts also weld in passing. Failures happen only where the space limits their number.
/// </summary>
internal sealed class Reach
{
    private readonly StateSpace space;
    private readonly Settling settling;
    private readonly bool uncertainToo;
    private readonly (Transition Move, Diagram Source)[] moves;
    private readonly Lazy<Diagram> all;

    public Reach(
        StateSpace space,
        Settling settling,
        IEnumerable<Transition> transitions,
        Diagram start,
        bool uncertainToo
    )
    {
        this.space = space;
        this.settling = settling;
        this.uncertainToo = uncertainToo;
        var failing = space.Failures is > 0;
        moves =
        [
            .. transitions.Where(t => failing || t.Cause != Cause.Failure).Select(t => (t, SourceOf(t))),
        ];
        Start = start;
        Following = RelationOf(urgent: true);
        Operating = RelationOf(urgent: false);
        all = new(() => Following.Union(Operating).Forward(start));
    }

    private Reach(Reach other, Diagram start)
    {
        (space, settling, uncertainToo, moves) = (
            other.space,
            other.settling,
            other.uncertainToo,
            other.moves
        );
        (Following, Operating, Start) = (other.Following, other.Operating, start);
        all = new(() => Following.Union(Operating).Forward(start));
    }

    public Diagram Start { get; }

    /// <summary>The same moves from another start.</summary>
    public Reach With(Diagram start) => new(this, start);

    /// <summary>The start states from which the target is reached.</summary>
    public Diagram StartsOf(Diagram target) =>
        space.Table.And(Start, Following.Union(Operating).Backward(target));

    /// <summary>Every state reached, passing ones included.</summary>
    public Diagram All => all.Value;

    /// <summary>The moves that follow by themselves, certain or not.</summary>
    public Relation Following { get; }

    /// <summary>All other moves.</summary>
    public Relation Operating { get; }

    /// <summary>The moves that may be made from the state, in declared order.</summary>
    public IEnumerable<Transition> OpenAt(State state)
    {
        var assignment = space.Assignment(state);
        return moves
            .Where(m => m.Move.From == state[m.Move.Variable] && space.Table.Evaluate(m.Source, assignment))
            .Select(m => m.Move);
    }

    /// <summary>The states from which the move may be made.</summary>
    private Diagram SourceOf(Transition t)
    {
        var table = space.Table;
        var anywhere = t.IsUrgent || IsWelding(t);
        var certain = anywhere ? t.Certain : table.And(t.Certain, settling.Settled);
        var source = table.Or(certain, t.Shorted);
        return uncertainToo ? table.Or(source, t.Uncertain) : source;
    }

    private bool IsWelding(Transition t) => space.Variables[t.Variable].Class == FailureClass.Contact;

    private Relation RelationOf(bool urgent) =>
        new(space, moves.Where(m => m.Move.IsUrgent == urgent).Select(m => Arc.Of(space, m.Move, m.Source)));
}
