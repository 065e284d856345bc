using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Judges the intents of a site, each over the panels that it speaks of and those that feed them.</summary>
internal static class SiteIntents
{
    /// <summary>The checks that speak of intents; all others look at panels.</summary>
    private static readonly string[] Checks = ["intent-refuted", "intent-vacuous"];

    public static CheckReport Report(Site site, Outlines outlines, int failures, CancellationToken stop)
    {
        var reports = site
            .Own.Netlist!.Intents.Select(i => Judge(site, outlines, i, failures, stop))
            .ToArray();
        return reports[0] with
        {
            Findings = [.. reports.SelectMany(r => r.Findings)],
            Proved = [.. reports.SelectMany(r => r.Proved)],
            Assumed = [.. reports.SelectMany(r => r.Assumed).Distinct()],
            Incomplete = [.. reports.SelectMany(r => r.Incomplete).Distinct()],
            Complete = reports.All(r => r.Complete),
        };
    }

    private static CheckReport Judge(
        Site site,
        Outlines outlines,
        Intent intent,
        int failures,
        CancellationToken stop
    )
    {
        var scope = new Scope(site, outlines, ScopeOf(site, outlines, intent));
        var netlist = scope.Netlist();
        var line = site.Own.Netlist!.Intents.Index().First(i => ReferenceEquals(i.Item, intent)).Index;
        netlist = netlist with { Intents = [netlist.Intents[line]] };
        var behaviour = Behaviour.Judged(netlist.WithoutFailures(), stop);
        var evidence = new Evidence(
            site.Members[0].Span.Source,
            scope.Panel(),
            netlist,
            behaviour,
            failures,
            stop
        );
        return Inspector.Inspect(evidence, [.. Checks.Select(c => Catalogue.Find(c)!)], stop) with
        {
            Panel = $"{site.Own.Panel.Name}, intents",
        };
    }

    private static IReadOnlyCollection<SitePart> ScopeOf(Site site, Outlines outlines, Intent intent)
    {
        IEnumerable<string?> names =
        [
            intent.Of,
            .. intent.By.Select(o => o.Variable),
            .. intent.Via,
            .. Guards.AllNames(intent.When),
        ];
        return ScopeParts.Of(outlines, [.. names.OfType<string>()]);
    }
}
