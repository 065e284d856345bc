namespace Coldpath.Circuit.Phasors;

/// <summary>Volts across a coil as far as what is known of its circuit allows.</summary>
/// <param name="Low">The least it may be.</param>
/// <param name="High">The most it may be.</param>
/// <param name="Unknown">Why nobody can say; null when the two bound it.</param>
public sealed record CoilVoltage(double Low, double High, string? Unknown)
{
    public static CoilVoltage Of(string reason) => new(0, double.PositiveInfinity, reason);

    public bool IsKnown => Unknown is null;
}
