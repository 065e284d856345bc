using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings;

/// <summary>A part of a device that no chain passes: spare, or wired by wire lists alone.</summary>
/// <param name="Part">The words for it; empty for a single terminal and for what a bare name passes.</param>
/// <param name="Contact">When it is a contact of a family.</param>
/// <param name="Left">Its left terminal.</param>
/// <param name="Right">Its right terminal; null for a single terminal.</param>
internal sealed record ApartPart(
    PlacedDevice Device,
    string Part,
    Contact? Contact,
    string Left,
    string? Right
)
{
    /// <param name="drawn">Terminals shown elsewhere.</param>
    public static IEnumerable<ApartPart> Of(PlacedDevice device, IReadOnlySet<Terminal> drawn)
    {
        var left = device
            .Terminals.Where(t => !drawn.Contains(new(device.Tag, t)))
            .ToHashSet(StringComparer.Ordinal);
        foreach (var part in device.Blueprint.Parts)
        foreach (var (a, b) in part.Left.Zip(part.Right))
            if (a != b && left.Contains(a) && left.Contains(b))
            {
                left.Remove(a);
                left.Remove(b);
                yield return new(device, part.Name, null, a, b);
            }
        foreach (var contact in device.Contacts)
            if (left.Contains(contact.Left) && left.Contains(contact.Right))
            {
                left.Remove(contact.Left);
                left.Remove(contact.Right);
                yield return new(device, contact.Family.Name, contact, contact.Left, contact.Right);
            }
        foreach (var terminal in device.Terminals.Where(left.Contains))
            yield return new(device, "", null, terminal, null);
    }
}
