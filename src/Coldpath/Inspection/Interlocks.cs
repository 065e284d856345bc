using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Two controllers that must not be closed together, and an order in which nothing of the first holds the second.</summary>
/// <param name="First">Closed already.</param>
/// <param name="Second">Pulls in all the same.</param>
/// <param name="BothWays">Neither waits for the other.</param>
/// <param name="States">In which the second would pull in.</param>
public sealed record InterlockGap(string First, string Second, bool BothWays, Diagram States);

/// <summary>
/// Whether contactors whose overlap is a short wait for contacts of each other. Everything but the two may stand as
/// it likes here, so that a selector's position or a timer is no interlock.
/// </summary>
public sealed class Interlocks(Evidence evidence)
{
    private IReadOnlyList<InterlockGap>? gaps;

    private DiagramTable Table => evidence.Table;

    /// <summary>Gaps that no other finding speaks of: overlaps reached, or held off by a blocked armature, are left out.</summary>
    public IReadOnlyList<InterlockGap> Gaps() => gaps ??= [.. FindGaps()];

    private IEnumerable<InterlockGap> FindGaps()
    {
        foreach (var (a, b) in RivalPairs().ToArray())
        {
            if (evidence.Behaviour.IsSurelyReached(BothClosed(a, b)) || BlockedByEachOther(a, b))
                continue;
            var intoB = Overlap(a, b);
            var intoA = Overlap(b, a);
            if (intoB.IsFalse && intoA.IsFalse)
                continue;
            yield return intoB.IsFalse
                ? new(b, a, false, intoA)
                : new InterlockGap(a, b, !intoA.IsFalse, intoB);
        }
    }

    /// <summary>Pairs of controllers that make a short together which neither makes alone, in declared order.</summary>
    public IEnumerable<(string First, string Second)> RivalPairs()
    {
        var controllers = evidence
            .Devices.All.Select(d => d.Tag)
            .Where(tag => evidence.Devices.IsController(tag) && Armature(tag) is not null)
            .ToArray();
        var shortWithout = controllers.ToDictionary(tag => tag, ShortWithout);
        var shorted = evidence.Network.AnyShort();
        foreach (var (i, a) in controllers.Index())
        foreach (var b in controllers.Skip(i + 1))
        {
            var together = Table.AllOf(shorted, BothClosed(a, b), !shortWithout[a], !shortWithout[b]);
            if (!together.IsFalse)
                yield return (a, b);
        }
    }

    /// <summary>States in which the first is in and the second would be pulled, all others standing still.</summary>
    private Diagram Overlap(string first, string second)
    {
        var pulled = Armature(second)!;
        var pulls = evidence.Behaviour.Transitions.Where(t => IsPull(t, pulled)).ToArray();
        var restless = evidence.Behaviour.Transitions.Where(t =>
            t.IsUrgent && !IsOf(t, first) && !IsOf(t, second)
        );
        return Table.AllOf(
            evidence.Is(Armature(first)!, "in"),
            Table.AnyOf(pulls.Select(t => Table.AllOf(Table.Or(t.Certain, t.Uncertain), ShortsAfter(t)))),
            !Table.AnyOf(restless.Select(t => t.Certain)),
            evidence.Behaviour.Constrained,
            evidence.Behaviour.Space.Domain
        );
    }

    /// <summary>States that the move leads from into a short.</summary>
    private Diagram ShortsAfter(Transition move) =>
        evidence.Behaviour.Space.PreImage(
            evidence.Network.AnyShort(),
            Diagram.True,
            move.Variable,
            move.From,
            move.To
        );

    private bool BlockedByEachOther(string a, string b) =>
        new[] { a, b }.Any(tag => Table.Meet(evidence.Settled, evidence.Blocked(Armature(tag)!)));

    private Diagram BothClosed(string a, string b) =>
        Table.And(evidence.Devices.AnyClosed(a), evidence.Devices.AnyClosed(b));

    private Diagram ShortWithout(string tag) =>
        evidence.Network.Without(evidence.Devices.Poles(tag).Select(e => e.Id)).AnyShort();

    /// <summary>The armature that moves its poles; null where something else does.</summary>
    private Variable? Armature(string tag)
    {
        var moving = evidence.Devices.Poles(tag).SelectMany(e => Guards.Variables(e.Closed)).ToHashSet();
        return evidence
            .Devices.Variables(tag)
            .FirstOrDefault(v => v.Kind == VariableKind.Armature && moving.Contains(v.Name));
    }

    private bool IsPull(Transition t, Variable armature) =>
        evidence.Netlist.Variables[t.Variable].Name == armature.Name && armature.Values[t.To] == "in";

    private bool IsOf(Transition t, string tag) => evidence.Netlist.Variables[t.Variable].Device == tag;
}
