using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>One conductor of a supply.</summary>
/// <param name="Index">Among all sources.</param>
/// <param name="Supply">The supply it belongs to, a primary one or a converter's output.</param>
/// <param name="SupplyIndex">Primary supplies first, then converters' outputs, as declared.</param>
/// <param name="Conductor">As the netlist has it.</param>
/// <param name="Net">Where it is connected.</param>
/// <param name="On">The supply is active and present, and so is this conductor.</param>
internal sealed record Source(
    int Index,
    Supply Supply,
    int SupplyIndex,
    SupplyConductor Conductor,
    int Net,
    Diagram On
)
{
    /// <summary>Volts; below this two voltages are the same.</summary>
    private const double Least = 1e-6;

    public string Name => $"{Supply.Name}.{Conductor.Name}";

    /// <summary>A stored source counts in live and at grade loose only.</summary>
    public bool IsStored => Supply.Store is not null;

    /// <summary>
    /// Against the reference point of its synchronised group. A conductor marked minus stands below zero, whichever
    /// sign its volts are given with.
    /// </summary>
    public Complex Volts { get; } =
        Conductor is { Polarity: Polarity.Minus, Degrees: 0 }
            ? -Math.Abs(Conductor.Volts)
            : Complex.FromPolarCoordinates(Conductor.Volts, Conductor.Degrees * Math.PI / 180);

    public bool SameVoltage(Source other) => Complex.Abs(Volts - other.Volts) < Least;

    /// <summary>Volts between the two, of one synchronised group.</summary>
    public double Between(Source other) => Complex.Abs(Volts - other.Volts);

    /// <summary>The voltage to the other lies in the band, bounds included.</summary>
    public bool InBand(Source other, double low, double? high)
    {
        var volts = Between(other);
        return volts >= Least && volts >= low - Least && !(volts > high + Least);
    }
}
