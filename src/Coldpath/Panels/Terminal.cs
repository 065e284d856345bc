namespace Coldpath.Panels;

/// <summary>A terminal of a device, in the notation of IEC 61666: "Q1:1/L1".</summary>
public readonly record struct Terminal(string Device, string Name)
{
    public override string ToString() => $"{Device}:{Name}";
}
