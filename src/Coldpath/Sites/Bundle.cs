namespace Coldpath.Sites;

/// <summary>All nets that the same parts share.</summary>
/// <param name="joints">In the site's order.</param>
/// <param name="parts">In the site's order, two or more.</param>
internal sealed class Bundle(IReadOnlyList<string> joints, IReadOnlyList<SitePart> parts)
{
    public IReadOnlyList<string> Joints => joints;
    public IReadOnlyList<SitePart> Parts => parts;
}
