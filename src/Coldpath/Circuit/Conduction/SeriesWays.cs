using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>A way from a source to a net through solid components and series elements.</summary>
/// <param name="Nets">One net of each component it passes, from the source's to the last.</param>
/// <param name="When">The condition of the way.</param>
internal sealed record Way(IReadOnlyList<int> Nets, Diagram When);

/// <summary>All simple ways from nets to nets by load reach, each with the components it passes.</summary>
internal sealed class SeriesWays(Mesh mesh)
{
    private readonly Link[] series =
    [
        .. mesh.Links.Where(l => l.Type == ElementType.Series && !l.Closed.IsFalse && l.A != l.B),
    ];
    private readonly Dictionary<(int From, int To), IReadOnlyList<Way>> known = [];

    private DiagramTable Table => mesh.Table;

    /// <summary>Ways that pass no solid component twice.</summary>
    public IReadOnlyList<Way> Between(int from, int to)
    {
        if (!known.TryGetValue((from, to), out var ways))
        {
            var found = new List<Way>();
            Extend([from], from, to, Diagram.True, found);
            known.Add((from, to), ways = found);
        }
        return ways;
    }

    /// <summary>The two ways share no solid component.</summary>
    public Diagram Apart(Way one, Way other)
    {
        var apart = Diagram.True;
        foreach (var a in one.Nets)
        foreach (var b in other.Nets)
            apart = apart.IsFalse ? apart : Table.Except(apart, mesh.Joined(a, b));
        return apart;
    }

    private void Extend(List<int> passed, int at, int to, Diagram when, List<Way> found)
    {
        var arrived = Table.And(when, mesh.Joined(at, to));
        if (!arrived.IsFalse)
            found.Add(new([.. passed], arrived));
        var onward = Table.Except(when, mesh.Joined(at, to));
        foreach (var link in onward.IsFalse ? [] : series)
        {
            Through(link, link.A, link.B);
            Through(link, link.B, link.A);
        }

        void Through(Link link, int near, int far)
        {
            var next = Table.AllOf(onward, mesh.Joined(at, near), link.Closed);
            foreach (var earlier in passed)
                next = next.IsFalse ? next : Table.Except(next, mesh.Joined(earlier, far));
            if (next.IsFalse)
                return;
            passed.Add(far);
            Extend(passed, far, to, next, found);
            passed.RemoveAt(passed.Count - 1);
        }
    }
}
