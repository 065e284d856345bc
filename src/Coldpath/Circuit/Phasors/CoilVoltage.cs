using Coldpath.Circuit.Diagrams;

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

/// <summary>The voltage across a coil in one state.</summary>
/// <param name="Volts">What the solver finds.</param>
/// <param name="Rated">What the coil is made for, in volts.</param>
/// <param name="Needed">Below this it does not move, or does not hold, in volts.</param>
/// <param name="Condition">The states that have it in common.</param>
public sealed record CoilReading(CoilVoltage Volts, double Rated, double Needed, Diagram Condition);
