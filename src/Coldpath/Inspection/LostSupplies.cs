using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What takes supplies away: that one of them fails, wholly or in a phase, or that one part does.</summary>
/// <param name="Behaviour">The search that it belongs to.</param>
/// <param name="Variable">Says whether it has happened.</param>
/// <param name="Others">States in which nothing else of that sort has.</param>
/// <param name="Words">"MAINS L1 is lost".</param>
public sealed record Loss(Behaviour Behaviour, Variable Variable, Diagram Others, string Words)
{
    private DiagramTable Table => Behaviour.Table;
    private Diagram Undone => Behaviour.Space.Is(Variable.Name, Variable.Rest);

    /// <summary>States in which it has happened, and nothing else of that sort.</summary>
    public Diagram Happened => Table.Except(Others, Undone);

    /// <summary>Of the states those that would be among others if it alone had not happened.</summary>
    public Diagram WouldBe(Diagram states, Diagram others) =>
        Table.And(states, Table.Exists(Table.And(others, Undone), Levels));

    private Diagram Levels => Table.Cube(Behaviour.Space.LevelsOf(Behaviour.Space.IndexOf(Variable.Name)));
}

internal static class LostSupplies
{
    /// <summary>Supplies first, in declared order.</summary>
    public static IEnumerable<Loss> All(Evidence e) =>
        Supplies(e).Concat(e.Failing(1).SelectMany(part => Parts(e, part)));

    private static IEnumerable<Loss> Supplies(Evidence e) =>
        from lost in e.Netlist.Variables.Where(e.IsPresence)
        let others = Present(e, e.Behaviour, lost)
        select new Loss(e.Behaviour, lost, others, $"{lost.Name.Replace('.', ' ')} is lost");

    private static IEnumerable<Loss> Parts(Evidence e, Behaviour part)
    {
        var present = Present(e, part, but: null);
        foreach (var failure in part.Space.FailureVariables.Select(v => part.Space.Variables[v]))
            yield return new(part, failure, present, FailureWords.Of(failure));
    }

    private static Diagram Present(Evidence e, Behaviour behaviour, Variable? but) =>
        behaviour.Table.AllOf(
            e.Netlist.Variables.Where(v => e.IsPresence(v) && v.Name != but?.Name)
                .Select(v => behaviour.Space.Is(v.Name, v.Rest))
        );
}
