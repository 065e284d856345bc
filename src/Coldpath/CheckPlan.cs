using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Notation;
using Coldpath.Panels.Sites;
using Coldpath.Sites;

namespace Coldpath;

/// <summary>
/// What has to be done to check a description: one piece of work for a panel, one for each panel of a site and each of
/// its own devices that switch or feed. The pieces are independent of each other.
/// </summary>
public sealed class CheckPlan
{
    private CheckPlan(string source, IReadOnlyList<CheckPiece> pieces, IReadOnlyList<string> files) =>
        (Source, Pieces, Files) = (source, pieces, files);

    /// <summary>The description's name.</summary>
    public string Source { get; }

    /// <summary>In the order of the text.</summary>
    public IReadOnlyList<CheckPiece> Pieces { get; }

    /// <summary>Names of the files that are checked as panels of the site.</summary>
    public IReadOnlyList<string> Files { get; }

    /// <param name="source">The description of a panel or of a site.</param>
    /// <param name="stop">Ends the work early.</param>
    /// <param name="failures">How many failures the checks that ask for failures reckon with.</param>
    /// <param name="shares">Panels of a site with one text and the same surroundings are searched once.</param>
    public static CheckPlan Of(
        SourceText source,
        CancellationToken stop,
        int failures = 1,
        bool shares = true
    )
    {
        var parsed = PanelParser.Parse(source);
        if (!SiteBinder.IsSite(parsed.Panel))
            return new(
                source.Name,
                [new CheckPiece(source.Name, () => Workbench.Check(source, stop, failures))],
                []
            );
        var (_, site, findings) = SiteBinder.Bind(parsed, KindLibrary.Standard);
        return site is null
            ? new(
                source.Name,
                [new CheckPiece(source.Name, () => Workbench.Unreadable(source, findings))],
                []
            )
            : new(
                source.Name,
                [.. new SiteInspector(site, shares).Pieces(failures, stop)],
                [.. site.Members.Select(m => m.Source.Name).Distinct()]
            );
    }
}
