using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Sites;

/// <summary>What one part can do to one bundle's nets.</summary>
/// <param name="ways">In the part, and through what stands behind its other bundles.</param>
/// <param name="kept">What has to be passed on.</param>
internal sealed class PartOutline(SitePart part, Bundle to, BestWays ways, Arrivals kept)
{
    private readonly Dictionary<(string, Grade, string, string), Passage> passages = [];

    /// <param name="others">What stands behind its other bundles.</param>
    public Outline Of(IReadOnlyList<Outline> others)
    {
        var arriving = others.SelectMany(o => o.Feeds).ToArray();
        var power = PowerNets.Of(part.Netlist, others.SelectMany(o => o.Power).Select(j => part.Nets[j]));
        var own =
            from source in part.Sources
            from conductor in source.Supply.Conductors
            let begins = new Feed(
                kept.Alone(source),
                conductor,
                "",
                Grade.Solid,
                BehindConverter(source, arriving)
            )
            from feed in Feeds(begins, conductor.Net, source.Supply.Name)
            select feed;
        var passing = arriving.SelectMany(f => Feeds(f, part.Nets[f.Joint], ""));
        return new Outline(
            kept.Kept(own.Concat(passing)),
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
            return new Through(Named(own), false);
        var isolators = reaching.Select(f => f.Isolator).Distinct().ToArray();
        return isolators is [{ } only] ? new Through(only, false) : Through.Nothing;
    }

    private bool Reaches(string net, IReadOnlyList<string> inputs, string without)
    {
        return inputs.Any(n => ways.Best(net, Grade.Solid, n, without: without).Grade < Grade.Loose);
    }

    private IEnumerable<Feed> Feeds(Feed origin, string net, string but) =>
        from joint in to.Joints
        from feed in Passed(net, origin.Grade, but, part.Nets[joint]).Of(origin)
        select feed with
        {
            Joint = joint,
        };

    private Passage Passed(string start, Grade grade, string but, string end)
    {
        var key = (start, grade, but, end);
        if (!passages.TryGetValue(key, out var passage))
            passages.Add(key, passage = Find(start, grade, but, end));
        return passage;
    }

    private Passage Find(string start, Grade grade, string but, string end)
    {
        var (at, passed) = ways.Best(start, grade, end, but);
        if (at == Reached.Not)
            return Passage.None;
        var isolators = part.Isolators.Where(d => passed.Contains(d.Tag)).ToArray();
        var strong = isolators.FirstOrDefault(d => at < Grade.Loose && Without(d.Tag) >= Grade.Loose);
        return new(
            at,
            Named(strong),
            at < Grade.Loose && part.Clearing.Any(d => passed.Contains(d) && Without(d) >= Grade.Loose),
            at == Grade.Loose || (strong is not null && Without(strong.Tag) == Grade.Loose),
            Named(isolators.FirstOrDefault(d => Without(d.Tag) == Reached.Not))
        );

        Grade Without(string device) => ways.Best(start, grade, end, but, device).Grade;
    }

    private NetlistDevice? Named(NetlistDevice? own) =>
        own is null ? null : own with { Tag = part.Prefix + own.Tag };

    private IEnumerable<Tie> Ties() =>
        from i in Enumerable.Range(0, to.Joints.Count)
        from other in to.Joints.Skip(i + 1)
        let grade = ways.Best(part.Nets[to.Joints[i]], Grade.Solid, part.Nets[other]).Grade
        where grade != Reached.Not
        select new Tie(to.Joints[i], other, grade);
}
