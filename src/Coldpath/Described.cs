using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Sites;

namespace Coldpath;

/// <summary>A description bound: a panel, or of a site what a question about some of its devices has to follow.</summary>
internal static class Described
{
    /// <summary>More parts of a site are followed only for whoever says which are meant.</summary>
    private const int MostParts = 12;

    /// <param name="parsed">The description.</param>
    /// <param name="names">Devices, points or variables that are asked about; empty for the whole description.</param>
    public static BoundResult Bind(ParseResult parsed, IReadOnlyCollection<string> names)
    {
        if (!SiteBinder.IsSite(parsed.Panel))
            return PanelBinder.Bind(parsed, KindLibrary.Standard);
        var bound = SiteBinder.Bind(parsed, KindLibrary.Standard);
        if (bound.Site is not { } site)
            return new(bound.Own, null, bound.Findings);
        var outlines = new Outlines(site);
        var parts = ScopeParts.Of(outlines, names);
        if (parts.Count == 0 && outlines.Parts.Count > MostParts)
            return new(bound.Own, null, [.. bound.Findings, TooMany(parsed, outlines.Parts.Count)]);
        var scope = new Scope(site, outlines, parts.Count > 0 ? parts : [.. outlines.Parts]);
        return new(scope.Panel(), scope.Netlist(), bound.Findings);
    }

    private static Finding TooMany(ParseResult parsed, int parts)
    {
        var start = new Span(parsed.Panel.Span.Source, 0, 0);
        return SiteFindings.TooManyParts(start, parts);
    }
}
