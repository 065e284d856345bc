using Coldpath.Findings;

namespace Coldpath.Panels.Sites;

/// <summary>What the nets of a site join in its panels.</summary>
internal sealed class SiteJoints(IReadOnlyList<SiteMember> members, List<Finding> findings)
{
    private readonly Dictionary<string, SiteMember> byTag = members.ToDictionary(
        m => m.Tag,
        StringComparer.Ordinal
    );
    private readonly Dictionary<string, Dictionary<Terminal, string>> netsOf = new(StringComparer.Ordinal);

    public IEnumerable<SiteJoint> Of(Panel own)
    {
        SiteJoint[] joints =
        [
            .. own
                .Nets.Select(n => new SiteJoint(
                    n.Name,
                    [.. n.Terminals.Select(t => End(t, n.Terminals.Count > 1)).OfType<SiteEnd>()]
                ))
                .Where(j => j.Ends.Count > 0),
        ];
        foreach (var fed in joints.SelectMany(j => j.Ends).Where(e => e.FeedsSupply).GroupBy(Supply))
            ReportHalfFed(fed.Key.Member, fed.Key.Supply, [.. fed.Select(e => e.Terminal)]);
        return joints;
    }

    private static (SiteMember Member, string Supply) Supply(SiteEnd end) =>
        (end.Member, end.Terminal.Device);

    /// <summary>A terminal that is only mentioned feeds nothing.</summary>
    private SiteEnd? End(Terminal terminal, bool isJoined)
    {
        var slash = terminal.Device.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || !byTag.TryGetValue(terminal.Device[..slash], out var member))
            return null;
        var own = new Terminal(terminal.Device[(slash + 1)..], terminal.Name);
        if (Nets(member).TryGetValue(own, out var net))
            return new SiteEnd(member, own, net, isJoined && IsSupply(member, own.Device));
        findings.Add(SiteFindings.NoTerminal(member.Span, terminal.ToString(), member.Source.Name));
        return null;
    }

    private static bool IsSupply(SiteMember member, string device) =>
        member.Bound.Panel.Find(device) is { Blueprint: { LineSide: [], Network.Supplies.Count: > 0 } };

    private Dictionary<Terminal, string> Nets(SiteMember member)
    {
        if (!netsOf.TryGetValue(member.Source.Name, out var nets))
            netsOf.Add(
                member.Source.Name,
                nets = member
                    .Bound.Panel.Nets.SelectMany(n => n.Terminals.Select(t => (t, n.Name)))
                    .ToDictionary()
            );
        return nets;
    }

    /// <summary>A conductor that the panel uses and nobody feeds would be dead in the site and live in the panel.</summary>
    private void ReportHalfFed(SiteMember member, string supply, HashSet<Terminal> fed)
    {
        var missing = member
            .Bound.Panel.Nets.Where(n => n.Terminals.Count > 1)
            .SelectMany(n => n.Terminals)
            .Where(t => t.Device == supply && !fed.Contains(t))
            .Select(t => t.Name)
            .ToArray();
        if (missing.Length > 0)
            findings.Add(SiteFindings.HalfFed(member, supply, missing));
    }
}
