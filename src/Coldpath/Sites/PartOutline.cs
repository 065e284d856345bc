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
            let begins = new Feed(source, conductor, "", Grade.Solid, BehindConverter(source, arriving))
            from feed in Feeds(begins, conductor.Net, source.Supply.Name)
            select feed;
        var passing = arriving.SelectMany(f => Feeds(f, part.Nets[f.Joint], ""));
        return new Outline(
            Outline.Best(own.Concat(passing)),
            Outline.Best(Ties()),
            [.. to.Joints.Where(j => power.Contains(part.Nets[j])).Order(StringComparer.Ordinal)]
        );
    }

    /// <summary>A converter's output goes when what feeds it is isolated.</summary>
    private Through BehindConverter(Source source, IEnumerable<Feed> arriving)
    {
        if (
            part.Netlist.Converters.FirstOrDefault(c => c.Output.Name == source.Supply.Name)
            is not { } converter
        )
            return Through.Nothing;
        (string Net, NetlistDevice? Isolator)[] feeding =
        [
            .. part.Netlist.Supplies.SelectMany(s => s.Conductors.Select(c => (c.Net, (NetlistDevice?)null))),
            .. arriving
                .Where(f => f.Grade < Grade.Loose)
                .Select(f => (part.Nets[f.Joint], f.Through.Isolator)),
        ];
        var reaching = feeding.Where(f => Reaches(f.Net, converter.Inputs, "")).ToArray();
        if (
            part.Isolators.FirstOrDefault(d => !reaching.Any(f => Reaches(f.Net, converter.Inputs, d.Tag))) is
            { } own
        )
            return new Through(own with { Tag = part.Prefix + own.Tag }, false);
        var isolators = reaching.Select(f => f.Isolator).Distinct().ToArray();
        return isolators is [{ } only] ? new Through(only, false) : Through.Nothing;
    }

    private bool Reaches(string net, IReadOnlyList<string> inputs, string without)
    {
        var reached = part.Spread.Reach(net, Grade.Solid, more: ties, without: without);
        return inputs.Any(n => reached.TryGetValue(n, out var grade) && grade < Grade.Loose);
    }

    private IEnumerable<Feed> Feeds(Feed origin, string net, string but)
    {
        var reached = part.Spread.Reach(net, origin.Grade, but, ties);
        foreach (var joint in to.Joints)
            if (reached.TryGetValue(part.Nets[joint], out var at))
                yield return origin with
                {
                    Joint = joint,
                    Grade = at,
                    Through = at < Grade.Loose ? Passed(origin, net, but, part.Nets[joint]) : Through.Nothing,
                };
    }

    /// <summary>The nearest isolator is this part's own, if all ways pass one here.</summary>
    private Through Passed(Feed origin, string start, string but, string end)
    {
        var isolator = part.Isolators.FirstOrDefault(d => Parts(d.Tag));
        var clears = origin.Through.Clears || part.Clearing.Any(Parts);
        return new Through(
            isolator is null ? origin.Through.Isolator : isolator with { Tag = part.Prefix + isolator.Tag },
            clears
        );

        bool Parts(string device) =>
            !part.Spread.Reach(start, origin.Grade, but, ties, device).TryGetValue(end, out var grade)
            || grade == Grade.Loose;
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
