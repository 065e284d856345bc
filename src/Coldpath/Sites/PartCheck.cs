using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Checks one part of a site, with what the rest may do to it.</summary>
internal sealed class PartCheck(Site site, Outlines outlines, SitePart part)
{
    private readonly IReadOnlyList<FedSupply> fed = FedSupply.Of(part);

    public CheckReport Report(int failures, CancellationToken stop)
    {
        var netlist = Netlist();
        if (System.Environment.GetEnvironmentVariable("SHOW") == part.Tag) { foreach (var v in netlist.Variables.Where(v => v.Class is null)) System.Console.WriteLine(v.Name); foreach (var e in netlist.Elements.Where(e=>e.Id.Contains('/') || e.Id.Contains("panel"))) System.Console.WriteLine(e.Id + " " + e.Type); }
        var behaviour = Behaviour.Judged(netlist.WithoutFailures(), stop);
        var evidence = new Evidence(Source, Panel(), netlist, behaviour, failures, stop);
        var report = Inspector.Inspect(evidence, stop);
        return report with
        {
            Findings = [.. Unfit(), .. report.Findings.Where(IsOwn)],
            Assumed = [.. report.Assumed, .. Assumed()],
        };
    }

    /// <summary>In the part's own names, with supplies that the site feeds, and with stubs for all that is joined to it.</summary>
    public Netlist Netlist()
    {
        var own = part.Member is { } member
            ? member.Bound.Netlist! with
            {
                Elements = [.. member.Bound.Netlist!.Elements, .. part.Jumpers],
                Intents = member.Bound.Netlist!.Intents,
            }
            : part.Whole with { Intents = [] };
        return new Surroundings(own, fed, s => s.Home == part.Tag ? net => net : null).With(
            [.. outlines.Of(part).Select(b => (Label(b), outlines.Into(part, b)))],
            joint => part.Nets[joint]
        );
    }

    private string Label(Bundle bundle) => bundle.Parts.First(p => p != part).Label;

    private SourceText Source => part.Member?.Source ?? site.Own.Panel.Devices[0].Span.Source;

    private Panel Panel()
    {
        var leaving = part.Nets.Values.ToHashSet(StringComparer.Ordinal);
        if (part.Member is { } member)
            return member.Bound.Panel with { Leaving = Leaving(member.Bound.Panel, leaving) };
        var tags = part.Whole.Devices.Select(d => d.Tag).ToHashSet(StringComparer.Ordinal);
        var own = site.Own.Panel;
        return own with
        {
            Devices = [.. own.Devices.Where(d => tags.Contains(d.Tag))],
            Leaving = Leaving(own, leaving),
            Waivers = [],
            Untraced = [.. own.Untraced.Where(u => tags.Contains(u.Device))],
        };
    }

    private static HashSet<Terminal> Leaving(Panel panel, HashSet<string> nets) =>
        [.. panel.Nets.Where(n => nets.Contains(n.Name)).SelectMany(n => n.Terminals)];

    /// <summary>What only other parts are to blame for is found there.</summary>
    private bool IsOwn(Finding finding) =>
        finding.Devices.Count == 0
        || finding.Devices.Any(d => part.Whole.Devices.Any(own => own.Tag == d))
        || finding.Points.Count > 0;

    private IEnumerable<Finding> Unfit() =>
        from supply in fed
        from bundle in outlines.Of(part)
        let outline = outlines.Into(part, bundle)
        from source in outline.Feeds.Select(f => f.Source).Distinct()
        where supply.IsFedBy(source, outline) && !supply.Fits(source, outline)
        select SupplyUnfit.Finding(part.Member!, supply, source, outline);

    private IEnumerable<string> Assumed()
    {
        foreach (var supply in fed)
            yield return $"{supply.Tag} comes from {Evidence.List(Feeding(supply), "nothing in the site")}: "
                + "it may come and go at any time, each of its conductors by itself";
        foreach (var bundle in outlines.Of(part))
            if (outlines.Into(part, bundle).Ties.Count > 0)
                yield return "what else the site joins to "
                    + $"{Evidence.Some(bundle.Joints.Select(j => part.Nets[j]))} may take current or not, at any time";
    }

    private IEnumerable<string> Feeding(FedSupply supply) =>
        outlines
            .Of(part)
            .Select(b => outlines.Into(part, b))
            .SelectMany(o => o.Feeds.Select(f => f.Source).Distinct().Where(s => supply.IsFedBy(s, o)))
            .Select(s => s.Name)
            .Order(StringComparer.Ordinal);
}
