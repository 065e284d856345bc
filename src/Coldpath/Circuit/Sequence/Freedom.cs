using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// What may be while somebody relies on a part being dead: every variable free, interlocks or not, contacts welded,
/// semiconductors shorted, supplies back; only coils, wiring and controls have not failed.
/// </summary>
public static class Freedom
{
    /// <param name="space">Whose assignments these are.</param>
    /// <param name="named">Variables that a condition names: these are free whatever they are.</param>
    public static Diagram Of(StateSpace space, params IEnumerable<string> named)
    {
        var free = named.ToHashSet();
        var whole = space
            .Variables.Index()
            .Where(v => StaysWhole(v.Item))
            .Where(v => !free.Contains(v.Item.Name))
            .Select(v => space.Is(v.Index, space.Rest[v.Index]));
        return space.Table.AllOf([space.Domain, .. whole]);
    }

    /// <summary>A failure that is left out: of a coil, of wiring or of a control.</summary>
    public static bool StaysWhole(Variable variable) =>
        variable.Class is FailureClass.Coil or FailureClass.Wiring or FailureClass.Control;

    /// <summary>The variables that a condition names itself, once each.</summary>
    public static IEnumerable<string> NamedIn(Expression condition) => All(condition).Distinct();

    private static IEnumerable<string> All(Expression condition) =>
        condition switch
        {
            VariableIs v => [v.Variable],
            Not n => All(n.Term),
            All a => a.Terms.SelectMany(All),
            Any a => a.Terms.SelectMany(All),
            _ => [],
        };
}
