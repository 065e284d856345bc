using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// The bottom strongly connected components of a relation within a set of states that it does not leave: single
/// states without a move (steady), and larger ones (chatter).
/// </summary>
/// <remarks>
/// Variables that no move changes split the states into independent panes, of which there can be astronomically
/// many; every step below works on all panes at once, with at most one component a pane in hand.
/// </remarks>
internal sealed class Bottoms
{
    /// <summary>Components of one pane are met one after another; more than this is bounded work.</summary>
    private const int MostRounds = 10_000;

    private readonly StateSpace space;
    private readonly Relation moves;

    public Bottoms(StateSpace space, Relation moves, Diagram universe)
    {
        this.space = space;
        this.moves = moves;
        Steady = Table.Except(universe, moves.Sources);
        Chatter = Diagram.False;
        ChatterPicks = Diagram.False;
        FindChatter(Table.Except(universe, moves.Backward(Steady)));
    }

    /// <summary>States that no move leaves.</summary>
    public Diagram Steady { get; }

    /// <summary>States of the larger bottom components.</summary>
    public Diagram Chatter { get; private set; }

    /// <summary>One state of each larger bottom component.</summary>
    public Diagram ChatterPicks { get; private set; }

    public Diagram All => Table.Or(Steady, Chatter);

    private DiagramTable Table => space.Table;

    private void FindChatter(Diagram restless)
    {
        if (restless.IsFalse)
            return;
        restless = WithoutOneWayMoves(restless);
        var hidden = HiddenBits(restless);
        for (var round = 0; !restless.IsFalse; round++)
        {
            if (round == MostRounds)
                throw new DiagramLimitException("too many components that never settle");
            var (picks, component) = OneEachPane(restless, hidden);
            ChatterPicks = Table.Or(ChatterPicks, picks);
            Chatter = Table.Or(Chatter, component);
            restless = Table.Except(restless, moves.Backward(component));
        }
    }

    /// <summary>
    /// Takes out the states that lead to a move that can never be undone: none of them is in a bottom component.
    /// What is left moves few variables, so the panes are small.
    /// </summary>
    private Diagram WithoutOneWayMoves(Diagram restless)
    {
        Diagram before;
        do
        {
            before = restless;
            foreach (var arc in moves.From(restless).Arcs)
                restless = Table.Except(restless, moves.Backward(OneWay(arc, restless)));
        } while (restless != before);
        return restless;
    }

    private Diagram OneWay(Arc arc, Diagram within)
    {
        var oneWay = Diagram.False;
        var move = new Relation(space, [arc with { Source = Table.And(arc.Source, within) }]);
        for (var value = 0; value < space.Variables[arc.Variable].Values.Count; value++)
        {
            var leaving = move.From(space.Is(arc.Variable, value));
            if (leaving.Arcs.Count == 0)
                continue;
            var regained = moves.From(within).Backward(Table.And(within, space.Is(arc.Variable, value)));
            oneWay = Table.Or(oneWay, Table.Except(leaving.Sources, leaving.Preimage(regained)));
        }
        return oneWay;
    }

    private Diagram HiddenBits(Diagram restless) => space.Bits(moves.From(restless).Moving);

    private (Diagram Picks, Diagram Component) OneEachPane(Diagram restless, Diagram hidden)
    {
        var picks = PickEachPane(restless, hidden);
        for (var round = 0; round < MostRounds; round++)
        {
            var after = moves.Forward(picks);
            var lost = Table.Except(after, moves.From(after).Backward(picks));
            if (lost.IsFalse)
                return (picks, after);
            var open = Table.Exists(lost, hidden);
            picks = Table.Or(Table.Except(picks, open), PickEachPane(lost, hidden));
        }
        throw new DiagramLimitException("too many components on the way to one that never settles");
    }

    /// <summary>Of each pane that meets the states, the first of them.</summary>
    private Diagram PickEachPane(Diagram states, Diagram hidden)
    {
        foreach (var level in Table.Support(hidden))
        {
            var low = Table.Literal(level, false);
            var possible = Table.AndExists(states, low, hidden);
            states = Table.Except(states, Table.Except(possible, low));
        }
        return states;
    }
}
