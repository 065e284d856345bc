using System.Numerics;
using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// The impedances that an element may have: one when it is known, the corners of its band when a rating leaves it open, next
/// to nothing and infinite when nothing is known. Between the corners the voltage across a part of a circuit without
/// resonance lies between what the corners give.
/// </summary>
internal static class Impedances
{
    /// <summary>Ohms of a closed contact or a wire; common practice, and far below any load.</summary>
    public const double Solid = 0.001;

    /// <summary>
    /// Ohms that a semiconductor which does not conduct may come down to, with its snubber; common practice (5 mA and
    /// less at 24 V to 240 V).
    /// </summary>
    private const double Leakage = 5000;

    public static readonly Complex Open = new(double.PositiveInfinity, 0);
    private static readonly Complex[] Any = [new(Solid, 0), Open];

    /// <param name="conducting">The state.</param>
    /// <param name="link">An element that passes current in it.</param>
    /// <param name="direct">With direct voltage.</param>
    public static IReadOnlyList<Complex> Of(Conducting conducting, Link link, bool direct)
    {
        var element = link.Element;
        if (!conducting.Holds(link.Closed))
            return [new(Leakage, 0), Open];
        if (element.Ohms is { } ohms && (ohms.Resistance > 0 || ohms.Reactance != 0))
            return [new(Math.Max(ohms.Resistance, Solid), direct ? 0 : ohms.Reactance)];
        if (link.IsSolid)
            return [new(Solid, 0)];
        var burden = element.Burdens.FirstOrDefault(b => conducting.Holds(b.When));
        return burden is { Volts: { } volts } && IsOfUse(burden, direct)
            ? Corners(burden, volts, direct)
            : Any;
    }

    /// <summary>Something is known of it.</summary>
    public static bool Known(IReadOnlyList<Complex> corners) => !ReferenceEquals(corners, Any);

    /// <summary>The middle of the band; open when nothing is known.</summary>
    public static Complex Middle(IReadOnlyList<Complex> corners)
    {
        if (corners.Count == 1)
            return corners[0];
        var finite = corners.Where(c => double.IsFinite(c.Real)).ToArray();
        if (finite.Length < corners.Count)
            return Known(corners) ? 2 * finite.MaxBy(Complex.Abs) : Open;
        var size = Math.Sqrt(finite.Min(Complex.Abs) * finite.Max(Complex.Abs));
        var angle = (finite.Min(c => c.Phase) + finite.Max(c => c.Phase)) / 2;
        return Complex.FromPolarCoordinates(size, angle);
    }

    /// <summary>What a load takes with the other sort of voltage says nothing, unless it is a resistance.</summary>
    private static bool IsOfUse(Burden burden, bool direct) =>
        burden.Direct == direct || direct && burden.LeastFactor >= 1;

    private static Complex[] Corners(Burden burden, double volts, bool direct)
    {
        var corners =
            from va in new[] { burden.Least, burden.Most }.Distinct()
            from factor in new[] { burden.LeastFactor, burden.MostFactor }.Distinct()
            select va <= 0 ? Open : Impedance(volts * volts / va, burden.Direct ? 1 : factor, direct);
        return [.. corners.Distinct()];
    }

    private static Complex Impedance(double size, double factor, bool direct) =>
        new(size * factor, direct ? 0 : size * Math.Sqrt(1 - factor * factor));
}
