namespace Coldpath.Devices;

/// <summary>
/// What the panel's header says that a kind may ask for: <c>default system</c> takes the rating of the same name from
/// here, and <c>rules is IEC</c> asks for the rule set.
/// </summary>
public sealed record PanelFacts
{
    /// <summary>"NEC" or "IEC".</summary>
    public string Rules { get; init; } = "IEC";

    /// <summary>The header's system is missing or was not understood, which was said: nothing more is said for want of it.</summary>
    public bool Unclear { get; init; }

    /// <summary>Volts between line conductors; null when the header does not say.</summary>
    public double? Voltage { get; init; }

    /// <summary>The second value of a dual voltage, such as 277 in 480Y/277 V.</summary>
    public double? SecondVoltage { get; init; }

    /// <summary>1 or 3; null for direct current or when the header does not say.</summary>
    public int? Phases { get; init; }
    public bool Direct { get; init; }

    /// <summary>Hertz.</summary>
    public double? Frequency { get; init; }

    /// <summary>In the words of the language, such as "solidly earthed wye".</summary>
    public string? Earthing { get; init; }
}
