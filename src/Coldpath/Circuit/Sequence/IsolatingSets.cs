using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Which isolators, taken out, and which stores, discharged or blocked, make targets dead whatever else is the case.
/// Each such act has a switch of its own in a copy of the panel; all other variables are quantified away, so that the
/// minimal sets are a diagram over the switches and there may be any number of them.
/// </summary>
/// <remarks>
/// A set counts only if it stays enough when further isolators are taken out too: other people may be working. Where
/// each isolator has a position of its own that moves nothing but its poles, that makes no difference.
/// </remarks>
public sealed class IsolatingSets
{
    private readonly Isolators isolators;
    private readonly string[] targets;
    private readonly Lazy<MinimalSets> minimal;

    /// <param name="isolators">The panel with its switches.</param>
    /// <param name="targets">Nets that are all to be dead.</param>
    public IsolatingSets(Isolators isolators, params IEnumerable<string> targets)
    {
        this.isolators = isolators;
        this.targets = [.. targets.Distinct()];
        minimal = new(Find);
    }

    /// <summary>How many minimal sets there are.</summary>
    /// <exception cref="DiagramLimitException">The node budget does not do for all sets.</exception>
    public BigInteger Count => minimal.Value.Count;

    /// <summary>Nodes of the diagram that holds them.</summary>
    public int Nodes => minimal.Value.Nodes;

    /// <summary>The minimal sets, cheapest first; each in declared order.</summary>
    /// <param name="cost">Of one act, not negative.</param>
    /// <exception cref="DiagramLimitException">The node budget does not do for all sets.</exception>
    public IEnumerable<IReadOnlyList<IsolationAct>> Cheapest(Func<IsolationAct, long> cost)
    {
        var acts = isolators.Acts.ToDictionary(isolators.Asked.LevelOf);
        return minimal
            .Value.Cheapest([.. acts.Keys], level => cost(acts[level]))
            .Select(set => (IReadOnlyList<IsolationAct>)[.. set.Select(level => acts[level])]);
    }

    /// <summary>Done, these make the targets dead, whatever else is taken out or operated.</summary>
    public bool AreEnough(IEnumerable<string> done) => !isolators.CanBeLive(targets, done);

    /// <summary>How a target stays live with these done; null when they are enough.</summary>
    public Survival? Survival(IEnumerable<string> done) => isolators.StaysLive(targets, done);

    private MinimalSets Find()
    {
        var panel = isolators.Asked;
        var (space, table) = (panel.Space, panel.Space.Table);
        var switches = isolators.Acts.Select(panel.LevelOf).ToHashSet();
        var others = table.Cube(space.Levels.Where(level => !switches.Contains(level)));
        return new(table, !table.DownwardClosure(table.Exists(panel.Live(targets), others)));
    }
}
