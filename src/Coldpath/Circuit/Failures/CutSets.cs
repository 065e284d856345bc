using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// Which failures suffice: a set does when the hazard is reached while its members may happen and no others. A failure
/// never heals, so the failures that stand in a reached state are those that were needed at most.
/// </summary>
/// <param name="behaviour">Of the panel with as many failures as a set may have members.</param>
public sealed class CutSets(Behaviour behaviour)
{
    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => Space.Table;

    /// <summary>The minimal sets for one of the states to be reached, the best <paramref name="most"/> with stories.</summary>
    public SufficientFailures Of(Diagram hazard, int most = 20)
    {
        var reached = Table.And(hazard, behaviour.Reachable);
        var levels = Space.FailureVariables.ToDictionary(v => Space.LevelsOf(v).Single());
        var others = Space.Levels.Except(levels.Keys);
        var family = Table.Minimal(Table.Exists(reached, Table.Cube(others)), levels.Keys);
        var sets = Table
            .Sets(family, levels.Keys)
            .Take(most)
            .Select(set => Told([.. set.Select(level => levels[level]).Order()], reached));
        return new(Table.Count(family, [.. levels.Keys.Order()]), [.. sets]);
    }

    private FailureSet Told(int[] members, Diagram reached) =>
        new(members, behaviour.ShortestTo(Table.And(reached, Happened(members)))!);

    /// <summary>Just these have happened.</summary>
    private Diagram Happened(int[] members) =>
        Table.AllOf(
            Space.FailureVariables.Select(v => Space.Code(v, members.Contains(v) ? Failed(v) : Space.Rest[v]))
        );

    private int Failed(int variable) => 1 - Space.Rest[variable];
}
