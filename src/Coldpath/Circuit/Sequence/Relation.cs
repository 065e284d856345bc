using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// A set of moves as a relation between states. A move changes one variable, so images need no second set of
/// variables: hide the variable, then fix its new value.
/// </summary>
internal sealed class Relation
{
    /// <summary>Variables that take their turn together in a closure: fewer pile up more, more take longer a turn.</summary>
    private const int VariablesATurn = 4;

    private readonly StateSpace space;

    /// <summary>At most one for each variable and new value.</summary>
    private readonly Arc[] arcs;

    /// <summary>The arcs of a few variables at a time, those of the variables tested last first.</summary>
    private readonly Lazy<Arc[][]> turns;

    public Relation(StateSpace space, IEnumerable<Arc> arcs)
        : this(space, Merged(space, arcs)) { }

    private Relation(StateSpace space, Arc[] arcs)
    {
        this.space = space;
        this.arcs = arcs;
        turns = new(TakeTurns);
    }

    public IReadOnlyList<Arc> Arcs => arcs;

    /// <summary>The states that some move leaves.</summary>
    public Diagram Sources => Table.AnyOf(arcs.Select(a => a.Source));

    /// <summary>The variables that some move changes, rising.</summary>
    public IReadOnlyList<int> Moving => [.. arcs.Select(a => a.Variable).Distinct().Order()];

    private DiagramTable Table => space.Table;

    /// <summary>The same moves, from these states only.</summary>
    public Relation From(Diagram states) =>
        new(
            space,
            arcs.Select(a => a with { Source = Table.And(a.Source, states) })
                .Where(a => !a.Source.IsFalse)
                .ToArray()
        );

    public Relation Union(Relation other) => new(space, arcs.Concat(other.arcs));

    /// <summary>The states one move after these.</summary>
    public Diagram Image(Diagram states) => Table.AnyOf(arcs.Select(a => Image(a, states)));

    /// <summary>The states one move before these.</summary>
    public Diagram Preimage(Diagram states) => Table.AnyOf(arcs.Select(a => Preimage(a, states)));

    /// <summary>These states and all that moves lead to from them.</summary>
    public Diagram Forward(Diagram states) => Closure(states, WithImage);

    /// <summary>These states and all from which moves lead to them.</summary>
    public Diagram Backward(Diagram states) => Closure(states, WithPreimage);

    /// <summary>
    /// What a turn's moves add goes through all turns before it again ere the next one comes: the sets in between stay
    /// regular, and so their diagrams small.
    /// </summary>
    private Diagram Closure(Diagram states, Func<Arc, Diagram, Diagram> step)
    {
        for (var turn = 0; turn < turns.Value.Length; )
        {
            var before = states;
            states = Repeat(states, turns.Value[turn], step);
            turn = states != before && turn > 0 ? 0 : turn + 1;
        }
        return states;
    }

    private static Diagram Repeat(Diagram states, Arc[] moves, Func<Arc, Diagram, Diagram> step)
    {
        Diagram before;
        do
        {
            before = states;
            foreach (var arc in moves)
                states = step(arc, states);
        } while (states != before && moves.Length > 1);
        return states;
    }

    private Diagram Image(Arc arc, Diagram states) =>
        Table.And(Table.AndExists(states, arc.Source, arc.Bits), arc.Code);

    private Diagram Preimage(Arc arc, Diagram states) =>
        Table.And(Table.AndExists(states, arc.Code, arc.Bits), arc.Source);

    private Diagram WithImage(Arc arc, Diagram states) =>
        Table.WithImage(states, arc.Source, arc.Bits, arc.Code);

    private Diagram WithPreimage(Arc arc, Diagram states) =>
        Table.WithPreimage(states, arc.Source, arc.Bits, arc.Code);

    private Arc[][] TakeTurns() =>
        [
            .. arcs.GroupBy(a => a.Variable)
                .OrderByDescending(g => space.LevelsOf(g.Key)[0])
                .Chunk(VariablesATurn)
                .Select(variables => variables.SelectMany(g => g).ToArray()),
        ];

    private static Arc[] Merged(StateSpace space, IEnumerable<Arc> arcs) =>
        [
            .. arcs.Where(a => !a.Source.IsFalse)
                .GroupBy(a => (a.Variable, a.To))
                .Select(g => g.First() with { Source = space.Table.AnyOf(g.Select(a => a.Source)) }),
        ];
}
