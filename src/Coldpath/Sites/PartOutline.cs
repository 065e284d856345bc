using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Sites;

/// <summary>What one part can do to one bundle's nets.</summary>
/// <param name="ties">What stands behind the part's other bundles may link of its nets.</param>
internal sealed class PartOutline(SitePart part, Bundle to, ILookup<string, Link> ties)
{
    /// <param name="others">What stands behind its other bundles.</param>
    public Outline Of(IReadOnlyList<Outline> others)
    {
        var arriving = others.SelectMany(o => o.Feeds);
        var power = PowerNets.Of(part.Netlist, others.SelectMany(o => o.Power).Select(j => part.Nets[j]));
        var own =
            from source in part.Sources
            from conductor in source.Supply.Conductors
            from feed in Feeds(source, conductor, conductor.Net, Grade.Solid, source.Supply.Name)
            select feed;
        var passing = arriving.SelectMany(f => Feeds(f.Source, f.Conductor, part.Nets[f.Joint], f.Grade, ""));
        return new Outline(
            Outline.Best(own.Concat(passing)), Outline.Best(Ties()),
            [.. to.Joints.Where(j => power.Contains(part.Nets[j])).Order(StringComparer.Ordinal)]
        );
    }

    private IEnumerable<Feed> Feeds(Source source, SupplyConductor conductor, string net, Grade grade, string but)
    {
        var reached = part.Spread.Reach(net, grade, but, ties);
        foreach (var joint in to.Joints)
            if (reached.TryGetValue(part.Nets[joint], out var at))
                yield return new Feed(source, conductor, joint, at);
    }

    private IEnumerable<Tie> Ties()
    {
        for (var i = 0; i < to.Joints.Count; i++)
        {
            var reached = part.Spread.Reach(part.Nets[to.Joints[i]], Grade.Solid, more: ties);
            foreach (var other in to.Joints.Skip(i + 1))
                if (reached.TryGetValue(part.Nets[other], out var grade))
                    yield return new Tie(to.Joints[i], other, grade);
        }
    }
}
