using Coldpath.Inspection;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// Checks a site part by part. Each part is searched by itself, with what the rest of the site may do to it, so the work
/// grows with the number of parts and not with what they could do together.
/// </summary>
public sealed class SiteInspector(Site site)
{
    private readonly Outlines outlines = new(site);

    /// <summary>In the order of the text; the site's own devices after the panels.</summary>
    public IEnumerable<CheckPiece> Pieces(int failures, CancellationToken stop) =>
        outlines
            .Parts.Where(p => p.Member is not null || p.Netlist.Variables.Count > 0)
            .Select(part => new CheckPiece(part.Tag, () => Check(part, failures, stop)));

    private CheckReport Check(SitePart part, int failures, CancellationToken stop)
    {
        var report = new PartCheck(site, outlines, part).Report(failures, stop);
        return report with { Panel = Name(part) };
    }

    private string Name(SitePart part) =>
        part.Member is { } member
            ? $"{part.Tag}, {member.Bound.Panel.Name}"
            : $"{Evidence.Some(part.Whole.Devices.Select(d => d.Tag))}, {site.Own.Panel.Name}";
}
