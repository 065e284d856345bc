using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>How a device's elements stand: in the state that is shown, else at rest.</summary>
internal static class Standing
{
    public static bool IsClosed(PlacedDevice device, Element element, Shown shown) =>
        shown.Closed is { } closed && closed.TryGetValue($"{device.Tag}.{element.Id}", out var now)
            ? now
            : IsClosedAtRest(device, element);

    public static bool IsClosedAtRest(PlacedDevice device, Element element)
    {
        var rest = device.Blueprint.Network.Variables.ToDictionary(v => v.Name, v => v.Rest);
        return Conditions.Replaced(
            element.Closed,
            atom => rest.TryGetValue(atom.Variable, out var value) ? atom.Value == value : null
        )
            is Constant { Value: true };
    }
}
