using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>What the nets of parts are called in the whole site.</summary>
internal sealed class SiteNets
{
    private readonly Dictionary<string, string> nextOf = new(StringComparer.Ordinal);

    public SiteNets(IEnumerable<SitePart> parts)
    {
        foreach (var part in parts)
        foreach (var (joint, own) in part.Nets)
            Join(Joint(joint), part.Prefix + own);
    }

    /// <summary>A part's own net.</summary>
    public string Of(SitePart part, string net) => net == part.Netlist.Earth ? net : Root(part.Prefix + net);

    /// <summary>The net at a joint.</summary>
    public string At(string joint) => Root(Joint(joint)).TrimStart('\n');

    private static string Joint(string joint) => $"\n{joint}";

    /// <summary>The end that is a part's own net gives the name.</summary>
    private void Join(string joint, string own)
    {
        var (a, b) = (Root(joint), Root(own));
        if (a != b)
            nextOf[a[0] == '\n' ? a : b] = a[0] == '\n' ? b : a;
    }

    private string Root(string net)
    {
        while (nextOf.TryGetValue(net, out var next))
            net = next;
        return net;
    }
}
