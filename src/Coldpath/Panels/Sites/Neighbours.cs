using Coldpath.Devices;
using Coldpath.Panels.Binding;

namespace Coldpath.Panels.Sites;

/// <summary>Devices of the panels of a site, as the site's own lines may speak of them: "P1/Q1".</summary>
internal sealed class Neighbours(IEnumerable<SiteMember> members)
{
    public static readonly Neighbours None = new([]);

    private readonly Dictionary<string, SiteMember> byTag = members
        .DistinctBy(m => m.Tag)
        .ToDictionary(m => m.Tag, StringComparer.Ordinal);
    private readonly Dictionary<string, Dictionary<string, PlacedDevice>> devices = [];

    public bool AreNone => byTag.Count == 0;

    /// <summary>The panel's part of "P1/Q1"; null when no panel of the site is called so.</summary>
    public SiteMember? MemberOf(string name) =>
        name.IndexOf('/') is > 0 and var slash ? byTag.GetValueOrDefault(name[..slash]) : null;

    /// <summary>The device of a panel; null when the name means none.</summary>
    public Declared? Find(string name) =>
        MemberOf(name) is { } member
        && Devices(member).TryGetValue(name[(member.Tag.Length + 1)..], out var device)
            ? new Declared(name, Seen(device), device.Span)
            : null;

    /// <summary>Names that may have been meant.</summary>
    public IEnumerable<string> Near(string name) =>
        MemberOf(name) is { } member ? Devices(member).Keys.Select(member.Named) : [];

    private Dictionary<string, PlacedDevice> Devices(SiteMember member)
    {
        if (!devices.TryGetValue(member.Source.Name, out var found))
            devices.Add(
                member.Source.Name,
                found = member
                    .Bound.Panel.Devices.DistinctBy(d => d.Tag)
                    .ToDictionary(d => d.Tag, StringComparer.Ordinal)
            );
        return found;
    }

    /// <summary>
    /// From outside, with the terminals that its own panel uses, and no contact left to take. What feeds a supply from
    /// outside arrives where the supply's own conductors leave.
    /// </summary>
    private static Blueprint Seen(PlacedDevice device)
    {
        var blueprint = device.Blueprint;
        string[] sides = [.. blueprint.LoadSide.Where(t => !Markings.IsNeutralOrEarth(t))];
        var terminals = blueprint.Network.Nets.Concat(device.Terminals).Distinct();
        return blueprint with
        {
            Network = blueprint.Network with { Nets = [.. terminals] },
            Families = [],
            LineSide = blueprint.LineSide.Count == 0 ? sides : blueprint.LineSide,
            LoadSide = blueprint.LineSide.Count == 0 ? sides : blueprint.LoadSide,
        };
    }
}
