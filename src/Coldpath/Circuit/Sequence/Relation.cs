using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// A set of moves as a relation between states. A move changes one variable, so images need no second set of
/// variables: hide the variable, then fix its new value.
/// </summary>
internal sealed class Relation
{
    private readonly StateSpace space;
    private readonly Arc[] arcs;

    /// <summary>Those of each variable together, the variable tested last first.</summary>
    private readonly Arc[][] byVariable;

    public Relation(StateSpace space, IEnumerable<Arc> arcs)
    {
        this.space = space;
        this.arcs = arcs.GroupBy(a => (a.Variable, a.To))
            .Select(g => new Arc(Table.AnyOf(g.Select(a => a.Source)), g.Key.Variable, g.Key.To))
            .Where(a => !a.Source.IsFalse)
            .ToArray();
        byVariable =
        [
            .. this
                .arcs.GroupBy(a => a.Variable)
                .OrderByDescending(g => space.LevelsOf(g.Key)[0])
                .Select(g => g.ToArray()),
        ];
    }

    public IReadOnlyList<Arc> Arcs => arcs;

    /// <summary>The states that some move leaves.</summary>
    public Diagram Sources => Table.AnyOf(arcs.Select(a => a.Source));

    /// <summary>The variables that some move changes, rising.</summary>
    public IReadOnlyList<int> Moving => [.. arcs.Select(a => a.Variable).Distinct().Order()];

    private DiagramTable Table => space.Table;

    /// <summary>The same moves, from these states only.</summary>
    public Relation From(Diagram states) =>
        new(space, arcs.Select(a => a with { Source = Table.And(a.Source, states) }));

    public Relation Union(Relation other) => new(space, arcs.Concat(other.arcs));

    /// <summary>The states one move after these.</summary>
    public Diagram Image(Diagram states) => Table.AnyOf(arcs.Select(a => Image(a, states)));

    /// <summary>The states one move before these.</summary>
    public Diagram Preimage(Diagram states) => Table.AnyOf(arcs.Select(a => Preimage(a, states)));

    /// <summary>These states and all that moves lead to from them.</summary>
    public Diagram Forward(Diagram states) => Closure(states, Image);

    /// <summary>These states and all from which moves lead to them.</summary>
    public Diagram Backward(Diagram states) => Closure(states, Preimage);

    /// <summary>
    /// Whatever a variable's moves add goes through all variables tested after it before the next one has its turn:
    /// the sets in between stay regular, and so their diagrams small.
    /// </summary>
    private Diagram Closure(Diagram states, Func<Arc, Diagram, Diagram> step)
    {
        for (var turn = 0; turn < byVariable.Length; )
        {
            var before = states;
            states = Repeat(states, byVariable[turn], step);
            turn = states != before && turn > 0 ? 0 : turn + 1;
        }
        return states;
    }

    private Diagram Repeat(Diagram states, Arc[] moves, Func<Arc, Diagram, Diagram> step)
    {
        Diagram before;
        do
        {
            before = states;
            foreach (var arc in moves)
                states = Table.Or(states, step(arc, states));
        } while (states != before && moves.Length > 1);
        return states;
    }

    private Diagram Image(Arc arc, Diagram states) =>
        Table.And(
            Table.AndExists(states, arc.Source, space.Bits(arc.Variable)),
            space.Code(arc.Variable, arc.To)
        );

    private Diagram Preimage(Arc arc, Diagram states) =>
        Table.And(
            Table.AndExists(states, space.Code(arc.Variable, arc.To), space.Bits(arc.Variable)),
            arc.Source
        );
}
