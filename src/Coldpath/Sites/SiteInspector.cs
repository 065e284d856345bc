using System.Collections.Concurrent;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Panels.Sites;

namespace Coldpath.Sites;

/// <summary>
/// Checks a site part by part. Each part is searched by itself, with what the rest of the site may do to it, so the work
/// grows with the number of parts and not with what they could do together.
/// </summary>
/// <param name="site">The site.</param>
/// <param name="shares">Parts of one text, surrounded alike, are searched once.</param>
public sealed class SiteInspector(Site site, bool shares = true)
{
    private readonly Outlines outlines = new(site);
    private readonly ConcurrentDictionary<(SourceText, string), Lazy<CheckReport>>? alike = shares
        ? new()
        : null;

    /// <summary>In the order of the text; the site's own devices after the panels, then its intents.</summary>
    public IEnumerable<CheckPiece> Pieces(int failures, CancellationToken stop)
    {
        foreach (var part in outlines.Parts)
            if (part.Member is not null || part.Netlist.Variables.Count > 0)
                yield return new CheckPiece(part.Tag, () => Check(part, failures, stop));
        if (site.Own.Netlist!.Intents.Count > 0)
            yield return new CheckPiece(
                "the site's intents",
                () => SiteIntents.Report(site, outlines, failures, stop)
            );
    }

    private CheckReport Check(SitePart part, int failures, CancellationToken stop) =>
        new PartCheck(site, outlines, part).Report(failures, alike, stop) with
        {
            Panel = Name(part),
        };

    private string Name(SitePart part) =>
        part.Member is { } member
            ? $"{part.Tag}, {member.Bound.Panel.Name}"
            : $"{Evidence.Some(part.Whole.Devices.Select(d => d.Tag))}, {site.Own.Panel.Name}";
}
