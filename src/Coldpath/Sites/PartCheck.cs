using System.Collections.Concurrent;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// Checks one part of a site, with what the rest may do to it. The rest bears stand-in names during the search, so that
/// parts which are described by one text and surrounded alike are searched once.
/// </summary>
internal sealed class PartCheck
{
    private readonly Site site;
    private readonly Around around;
    private readonly SitePart part;
    private readonly IReadOnlyList<FedSupply> fed;
    private readonly StandIns standIns = new();
    private readonly Netlist own;
    private readonly Stub stub;

    public PartCheck(Site site, Outlines outlines, SitePart part)
    {
        (this.site, this.part) = (site, part);
        around = outlines.Around(part);
        fed = FedSupply.Of(part);
        own = part.Member is { } member
            ? member.Bound.Netlist! with
            {
                Elements = [.. member.Bound.Netlist!.Elements, .. part.Jumpers],
            }
            : part.Whole with
            {
                Intents = [],
            };
        stub = Surroundings();
    }

    /// <param name="failures">How many may happen.</param>
    /// <param name="alike">What was found of parts alike; null to search each by itself.</param>
    /// <param name="stop">Ends the work early.</param>
    public CheckReport Report(
        int failures,
        ConcurrentDictionary<(SourceText, string), Lazy<CheckReport>>? alike,
        CancellationToken stop
    )
    {
        var report = alike is null
            ? Search(failures, stop)
            : alike
                .GetOrAdd(
                    (Source, $"{part.Tag}\n{stub.Signature}"[Shared..]),
                    _ => new(() => Search(failures, stop))
                )
                .Value;
        report = Renamed.Of(report, standIns);
        return report with
        {
            Findings = [.. Unfit(), .. report.Findings],
            Assumed = [.. report.Assumed, .. Assumed()],
        };
    }

    /// <summary>The site's own devices are one text, and told apart by their tags.</summary>
    private int Shared => part.Member is null ? 0 : part.Tag.Length + 1;

    /// <summary>In the part's own names, with supplies that the site feeds, and with stubs for all that is joined to it.</summary>
    public Netlist Netlist => stub.AddTo(own);

    private CheckReport Search(int failures, CancellationToken stop)
    {
        var netlist = Netlist;
        var behaviour = Behaviour.Judged(netlist.WithoutFailures(), stop);
        var evidence = new Evidence(Source, Panel(), netlist, behaviour, failures, stop);
        var report = Inspector.Inspect(evidence, stop);
        return report with { Findings = [.. report.Findings.Where(IsOwn)] };
    }

    private Stub Surroundings() =>
        new Surroundings(own, fed, s => s.Home == part.Tag ? net => net : null).Stub(
            [.. around.Neighbours.Select(n => (standIns.For(n.Label), standIns.For(n.Into, part.Tag)))],
            joint => part.Nets[joint]
        );

    private SourceText Source => part.Member?.Source ?? site.Own.Panel.Devices[0].Span.Source;

    private Panel Panel()
    {
        var leaving = part.Nets.Values.ToHashSet(StringComparer.Ordinal);
        if (part.Member is { } member)
            return member.Bound.Panel with { Leaving = Leaving(member.Bound.Panel, leaving) };
        var tags = part.Whole.Devices.Select(d => d.Tag).ToHashSet(StringComparer.Ordinal);
        var all = site.Own.Panel;
        return all with
        {
            Devices = [.. all.Devices.Where(d => tags.Contains(d.Tag))],
            Leaving = Leaving(all, leaving),
            Waivers = [.. all.Waivers.Where(w => w.On.Any(tags.Contains))],
            Untraced = [.. all.Untraced.Where(u => tags.Contains(u.Device))],
        };
    }

    private static HashSet<Terminal> Leaving(Panel panel, HashSet<string> nets) =>
        [.. panel.Nets.Where(n => nets.Contains(n.Name)).SelectMany(n => n.Terminals)];

    /// <summary>What only other parts are to blame for is found there.</summary>
    private bool IsOwn(Finding finding) =>
        finding.Devices.Count == 0
        || finding.Points.Count > 0
        || finding.Devices.Any(d => part.Whole.Devices.Any(device => device.Tag == d));

    private IEnumerable<Finding> Unfit() =>
        from supply in fed
        from outline in around.Neighbours.Select(n => n.Into)
        from source in outline.Feeds.Select(f => f.Source).Distinct()
        where supply.IsFedBy(source, outline) && !supply.Fits(source, outline)
        select SupplyUnfit.Finding(part.Member!, supply, source, outline);

    private IEnumerable<string> Assumed()
    {
        foreach (var supply in fed)
            yield return $"{supply.Tag} comes from {Evidence.List(Feeding(supply), "nothing in the site")}: "
                + "it may come and go at any time, each of its conductors by itself";
        foreach (var foreign in Foreign().GroupBy(f => (f.Source.Name, f.Through.Isolator?.Tag)))
            yield return $"{Evidence.Some(foreign.Select(f => part.Nets[f.Joint]))} may be live from {foreign.Key.Name} "
                + $"whatever is open here: {foreign.Key.Tag ?? "nothing that is known"} isolates it";
        foreach (var alike in around.StandFor)
            yield return $"what is said of {alike[0].Name} and {alike[1].Name} is as true of "
                + $"{Evidence.Some(alike.Skip(2).Select(s => s.Name))}, which nothing but the name tells from them";
    }

    /// <summary>Conductors from elsewhere that arrive through switches, and not at a supply that the site feeds.</summary>
    private IEnumerable<Feed> Foreign() =>
        around.Feeds.Where(f =>
            !f.IsLoose
            && f.Source.Home != part.Tag
            && !f.IsEarthed
            && !fed.Any(s => s.Joints.Values.Contains(f.Joint))
            && part.Member is not null
        );

    private IEnumerable<string> Feeding(FedSupply supply) =>
        around
            .Neighbours.Select(n => n.Into)
            .SelectMany(o => o.Feeds.Select(f => f.Source).Distinct().Where(s => supply.IsFedBy(s, o)))
            .Select(s => s.Name)
            .Order(StringComparer.Ordinal);
}
