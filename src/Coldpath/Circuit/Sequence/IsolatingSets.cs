using System.Numerics;
using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Which isolators, taken out, make targets dead whatever else is the case. Each isolator has a switch of its own
/// ("taken out") in a copy of the panel; all other variables are quantified away, so that the family of sets is a
/// diagram over the switches and may hold any number of them.
/// </summary>
/// <remarks>
/// A set counts only if it stays enough when further isolators are taken out too: other people may be working. Where
/// each isolator has a position of its own that moves nothing but its poles, that makes no difference.
/// </remarks>
public sealed class IsolatingSets
{
    private readonly Isolators isolators;
    private readonly Diagram live;
    private readonly Diagram enough;
    private readonly Diagram minimal;

    /// <param name="isolators">The panel with its switches.</param>
    /// <param name="targets">Nets that are all to be dead.</param>
    public IsolatingSets(Isolators isolators, params IEnumerable<string> targets)
    {
        this.isolators = isolators;
        live = Table.AnyOf(targets.Distinct().Select(isolators.Live));
        enough = !isolators.WithFewer(isolators.Possible(live));
        minimal = Table.Minimal(enough, isolators.Levels);
    }

    /// <summary>How many minimal sets there are.</summary>
    public BigInteger Count => Table.Count(minimal, isolators.Levels);

    private DiagramTable Table => isolators.Table;

    /// <summary>The minimal sets, cheapest first; each as tags in declared order.</summary>
    /// <param name="cost">Of one isolator, not negative.</param>
    public IEnumerable<IReadOnlyList<string>> Cheapest(Func<NetlistDevice, long> cost) =>
        Table
            .Sets(minimal, isolators.Levels, level => cost(isolators.AtLevel(level)))
            .Select(set => isolators.Tags(set));

    /// <summary>Taken out, these make the targets dead, whatever else is taken out or operated.</summary>
    public bool AreEnough(IEnumerable<string> taken) => Table.Meet(enough, isolators.Only(taken));

    /// <summary>How a target stays live with these taken out; null when they are enough.</summary>
    public Survival? Survival(IEnumerable<string> taken)
    {
        var survivals = Table.AllOf(live, isolators.Free, isolators.AtLeast(taken));
        return isolators.FirstSurvival(survivals);
    }
}
