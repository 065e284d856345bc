using Coldpath.Devices;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>What a part between two terminals is, read from its device's elements.</summary>
internal static class PartReading
{
    /// <param name="left">Its left terminal; null where a rung begins at it.</param>
    /// <param name="right">Its right terminal; null where a rung ends at it.</param>
    public static ControlPart Of(
        PlacedDevice device,
        string part,
        Contact? contact,
        string? left,
        string? right,
        string rules,
        Shown shown
    )
    {
        if (left is null || right is null || left == right)
            return new(device, rules, part, ControlRole.Terminal, [], true, true);
        var (element, rests) = ElementOf(device, contact, left, right);
        var atRest = element is null || IsClosed(element, rests);
        return new(
            device,
            rules,
            part,
            RoleOf(device, element, left, right),
            contact?.Positions ?? [],
            atRest,
            element is not null && shown.Closed is { } closed
                ? closed.GetValueOrDefault($"{device.Tag}.{element.Id}", atRest)
                : atRest
        );
    }

    private static (Element? Element, IEnumerable<Variable> Variables) ElementOf(
        PlacedDevice device,
        Contact? contact,
        string left,
        string right
    )
    {
        var network = device.Blueprint.Network;
        if (contact is null)
            return (network.Elements.FirstOrDefault(e => Joins(e.A, e.B, left, right)), network.Variables);
        var values = network.Variables.FirstOrDefault(v => v.Name == contact.Family.Positions)?.Values ?? [];
        var made = contact.Family.Contact(contact.Number, contact.Positions, values);
        return (made.Element, made.Weld is { } weld ? [.. network.Variables, weld] : network.Variables);
    }

    private static bool IsClosed(Element element, IEnumerable<Variable> variables)
    {
        var rest = variables.GroupBy(v => v.Name).ToDictionary(g => g.Key, g => g.First().Rest);
        return Conditions.Replaced(element.Closed, a => rest.GetValueOrDefault(a.Variable) == a.Value)
            is Constant { Value: true };
    }

    private static ControlRole RoleOf(PlacedDevice device, Element? element, string left, string right) =>
        device.Blueprint.Network.Variables.Any(v => v.Coil is [var a, var b] && Joins(a, b, left, right))
            ? ControlRole.Coil
            : element?.Type switch
            {
                ElementType.Contact => ControlRole.Contact,
                ElementType.Load => ControlRole.Load,
                _ => ControlRole.Through,
            };

    private static bool Joins(string a, string b, string left, string right) =>
        (a == left && b == right) || (a == right && b == left);
}
