namespace Coldpath.Wiring.Failures;

/// <summary>A part that may stop conducting.</summary>
/// <param name="Element">What conducts no longer.</param>
/// <param name="Name">Of the failure: "K1.open13-14", "F10.parted", "U1.blocked1", "M1.burntU".</param>
public sealed record OpenPart(Element Element, string Name)
{
    public FailureClass Class =>
        Element.Type switch
        {
            ElementType.Contact => FailureClass.Contact,
            ElementType.Semiconductor or ElementType.Diode => FailureClass.Semiconductor,
            ElementType.Load or ElementType.Series => FailureClass.Coil,
            _ => FailureClass.Wiring,
        };

    /// <summary>What it is called to fail so; none for what is no part of its own or fails otherwise.</summary>
    public static string? Verb(ElementType type) =>
        type switch
        {
            ElementType.Contact => "open",
            ElementType.Semiconductor or ElementType.Diode => "blocked",
            ElementType.Thermal => "parted",
            ElementType.Load or ElementType.Series => "burnt",
            _ => null,
        };

    /// <summary>"13-14", "2" for a pole, "U" for what begins there and ends inside.</summary>
    public static string Marking(Element element)
    {
        if (element is { Power: true, Pole: > 0 })
            return $"{element.Pole}";
        var own = element.Id[(element.Device.Length + 1)..];
        var ends = own.Split('-');
        return ends.Length == 2 && ends[1].StartsWith('*') ? ends[0].Split('/')[0] : own;
    }
}
