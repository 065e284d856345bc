namespace Coldpath.Wiring.Failures;

/// <summary>
/// Failures that make no other circuit than one that is searched anyway. A part that hangs on a wire by itself is open
/// when that wire is off; of two parts in series inside a device, where nobody can measure between them, one stands
/// for both.
/// </summary>
public sealed class RepeatedFailures
{
    private readonly NetMentions mentions;
    private readonly IReadOnlyDictionary<(string Device, string Net), string> wires;
    private readonly HashSet<string> measured;
    private readonly ILookup<string, OpenPart> at;

    private RepeatedFailures(Netlist netlist, IReadOnlyList<OpenPart> parts)
    {
        mentions = new(netlist);
        wires = WireFailures.Ends(netlist);
        measured = [.. netlist.Points.Select(p => p.Net), netlist.Earth];
        at = parts
            .SelectMany(p => new[] { (p.Element.A, p), (p.Element.B, p) })
            .ToLookup(pair => pair.Item1, pair => pair.p);
    }

    /// <summary>By the name of each the name of the failure that stands for it.</summary>
    public static IReadOnlyDictionary<string, string> Of(Netlist netlist)
    {
        var parts = OpenParts.Of(netlist);
        var repeated = new RepeatedFailures(netlist, parts);
        return parts
            .Select(p => (p.Name, Other: repeated.StandingFor(p)))
            .Where(pair => pair.Other is not null)
            .ToDictionary(pair => pair.Name, pair => pair.Other!);
    }

    private string? StandingFor(OpenPart part) =>
        new[] { part.Element.A, part.Element.B }
            .Select(net => WireOf(part, net) ?? PartInSeries(part, net))
            .FirstOrDefault(name => name is not null);

    private string? WireOf(OpenPart part, string net) =>
        mentions.IsOnly(part.Element.Device, net)
            ? wires.GetValueOrDefault((part.Element.Device, net))
            : null;

    /// <summary>A heater gives way to what it is in series with, else the later to the earlier.</summary>
    private string? PartInSeries(OpenPart part, string net)
    {
        if (measured.Contains(net) || mentions.Total(net) != 2)
            return null;
        OpenPart[] pair = [.. at[net].OrderBy(p => p.Element.Type == ElementType.Thermal)];
        return pair.Length == 2 && pair[0] != part ? pair[0].Name : null;
    }
}
