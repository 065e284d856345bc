using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The states that moves lead to from a start: urgent and optional moves from any state, all others from settled
/// ones. Failures stay out.
/// </summary>
internal sealed class Reach
{
    private readonly StateSpace space;
    private readonly Settling settling;
    private readonly IReadOnlyList<Transition> transitions;
    private readonly bool uncertainToo;
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
        this.transitions = [.. transitions.Where(t => t.Cause != Cause.Failure)];
        this.uncertainToo = uncertainToo;
        Start = start;
        Following = RelationOf(t => t.IsUrgent);
        Operating = RelationOf(t => !t.IsUrgent);
        all = new(() => Following.Union(Operating).Forward(start));
    }

    public Diagram Start { get; }

    /// <summary>The same moves from another start.</summary>
    public Reach With(Diagram start) => new(space, settling, transitions, start, uncertainToo);

    /// <summary>The start states from which the target is reached.</summary>
    public Diagram StartsOf(Diagram target) =>
        space.Table.And(Start, Following.Union(Operating).Backward(target));

    /// <summary>Every state reached, passing ones included.</summary>
    public Diagram All => all.Value;

    /// <summary>The moves that follow by themselves, certain or not.</summary>
    public Relation Following { get; }

    /// <summary>All other moves.</summary>
    public Relation Operating { get; }

    /// <summary>In declared order.</summary>
    public IReadOnlyList<Transition> Transitions => transitions;

    /// <summary>The states from which the move may be made.</summary>
    public Diagram SourceOf(Transition t)
    {
        var table = space.Table;
        var certain = t.IsUrgent ? t.Certain : table.And(t.Certain, settling.Settled);
        var source = table.Or(certain, t.Shorted);
        return uncertainToo ? table.Or(source, t.Uncertain) : source;
    }

    private Relation RelationOf(Func<Transition, bool> belongs) =>
        new(space, transitions.Where(belongs).Select(t => new Arc(SourceOf(t), t.Variable, t.To)));
}
