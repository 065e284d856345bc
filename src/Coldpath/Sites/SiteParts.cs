using Coldpath.Panels;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>Takes a site apart: its panels, and its own devices as they hang together.</summary>
internal static class SiteParts
{
    public static IReadOnlyList<SitePart> Of(Site site)
    {
        var ends = site
            .Joints.SelectMany(j => j.Ends.Select(e => (Joint: j.Net, End: e)))
            .ToLookup(e => e.End.Member.Tag, StringComparer.Ordinal);
        var alike = new Dictionary<(BoundResult, string), (Netlist, Netlist)>();
        return [.. site.Members.Select(m => OfMember(m, [.. ends[m.Tag]], alike)), .. OwnPieces(site)];
    }

    /// <summary>Panels that are described by one file and fed alike share what is made of it.</summary>
    private static SitePart OfMember(
        SiteMember member,
        (string Joint, SiteEnd End)[] ends,
        Dictionary<(BoundResult, string), (Netlist, Netlist)> alike
    )
    {
        var nets = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (joint, end) in ends)
            nets.TryAdd(joint, end.Net);
        var fed = ends.Where(e => e.End.FeedsSupply).Select(e => e.End.Terminal.Device).Distinct().ToArray();
        var jumpers = Jumpers.Of(ends.Select(e => (e.Joint, e.End.Net)));
        var key = (member.Bound, string.Join(' ', [.. fed, .. jumpers.Select(j => j.Id)]));
        if (!alike.TryGetValue(key, out var made))
            alike.Add(key, made = Netlists(member.Bound.Netlist!.WithoutSupplies(fed), jumpers));
        return new SitePart(member.Tag, member.Named(""), made.Item1, made.Item2, nets)
        {
            Member = member,
            Fed = fed,
            Jumpers = jumpers,
        };
    }

    private static (Netlist Whole, Netlist Sound) Netlists(Netlist netlist, IReadOnlyList<Element> jumpers)
    {
        var whole = netlist with { Elements = [.. netlist.Elements, .. jumpers] };
        return (whole, whole.WithoutFailures());
    }

    private static IEnumerable<SitePart> OwnPieces(Site site)
    {
        var joints = site.Joints.Select(j => j.Net).ToHashSet(StringComparer.Ordinal);
        foreach (var piece in Pieces.Of(site.Own.Netlist!))
            yield return new SitePart(
                piece.Devices[0].Tag,
                "",
                piece,
                piece.WithoutFailures(),
                piece.Nets.Where(joints.Contains).ToDictionary(n => n, n => n, StringComparer.Ordinal)
            );
    }
}
