using System.Numerics;

namespace Coldpath.Wiring;

/// <summary>Voltages of supply conductors as phasors.</summary>
public static class Phasors
{
    /// <summary>Volts between two conductors of one supply; rounded to a microvolt so that equal ones compare equal.</summary>
    public static double Between(SupplyConductor a, SupplyConductor b) =>
        Math.Round((Of(a) - Of(b)).Magnitude, 6);

    private static Complex Of(SupplyConductor c) =>
        Complex.FromPolarCoordinates(c.Volts, c.Degrees * Math.PI / 180);
}
