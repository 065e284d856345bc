namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Finds which rungs can hang from a node that a rung above them gives. Nodes in reach form a stack, the later the
/// further to the right: a rung that begins at one of them closes those to the right of it, and one that begins at a
/// rail closes all, since its line would cross them.
/// </summary>
internal sealed class Planning
{
    private readonly Rails rails;
    private readonly List<Stem> open = [];
    private readonly List<LadderSection> sections = [];
    private int block = -1;

    /// <summary>Nodes that hang from nodes; deeper ones would only push the rungs to the right.</summary>
    private const int Deepest = 6;

    private Planning(Rails rails) => this.rails = rails;

    /// <param name="breaks">Indices of rungs that nothing may lead down to, because a page ends above them.</param>
    public static (IReadOnlyList<RungPlan> Plans, IReadOnlyList<LadderSection> Sections) Of(
        IReadOnlyList<Rung> rungs,
        Rails rails,
        IReadOnlySet<int> breaks
    )
    {
        var planning = new Planning(rails);
        var plans = rungs.Select(r => planning.Plan(r, breaks.Contains(r.Index))).ToList();
        return (plans, planning.sections);
    }

    private RungPlan Plan(Rung rung, bool breaksHere)
    {
        var (left, right) = (rails.LeftOf(rung), rails.RightOf(rung));
        if (EnterSection(left, right) || breaksHere || open.Count > Deepest)
            open.Clear();
        var ends = right is null ? rails.NodeNet(rung.End) : null;
        var begins = left is null ? rails.NodeNet(rung.Start) : null;
        var from = begins is null ? null : open.FirstOrDefault(s => s.Net == begins);
        var together = CloseBehind(from, ends, rung.Index);
        if (open.Count == 0)
            block++;
        if (begins is not null && from is null)
            open.Add(from = new Stem(begins));
        from?.Take(rung.Index);
        var to = together ?? NewEnd(ends);
        to?.Give(rung.Index);
        return new(rung, sections.Count - 1, block, left is not null, right is not null, from, to);
    }

    /// <summary>True when a new section begins.</summary>
    private bool EnterSection(string? left, string? right)
    {
        if (sections is [.., var last] && Agree(last.Left, left) && Agree(last.Right, right))
        {
            sections[^1] = new(last.Left ?? left, last.Right ?? right);
            return false;
        }
        sections.Add(new(left, right));
        return true;
    }

    private static bool Agree(string? one, string? other) => one is null || other is null || one == other;

    /// <summary>Leaves open the node that the rung hangs from and those to the left of it; and one that the rung just
    /// above gives, when this rung ends at it too, which is returned.</summary>
    private Stem? CloseBehind(Stem? from, string? ends, int rung)
    {
        var keep = from is null ? 0 : open.IndexOf(from) + 1;
        var next = keep == open.Count - 1 ? open[keep] : null;
        var together =
            next is { Takers.Count: 0 } && next.Net == ends && next.Givers[^1] == rung - 1 ? next : null;
        if (together is not null)
            keep++;
        open.RemoveRange(keep, open.Count - keep);
        return together;
    }

    private Stem? NewEnd(string? net)
    {
        if (net is null || open.Exists(s => s.Net == net))
            return null;
        var stem = new Stem(net);
        open.Add(stem);
        return stem;
    }
}
