using Coldpath.Findings;

namespace Coldpath.Panels.Sites;

/// <summary>A panel of a site.</summary>
/// <param name="Tag">What the site calls it; the tags of its devices follow behind a slash.</param>
/// <param name="Source">Its own description, which several members may share.</param>
/// <param name="Bound">What that says.</param>
/// <param name="Span">Where the site names it.</param>
public sealed record SiteMember(string Tag, SourceText Source, BoundResult Bound, Span Span)
{
    /// <summary>"P1/Q1".</summary>
    public string Named(string own) => $"{Tag}/{own}";
}
