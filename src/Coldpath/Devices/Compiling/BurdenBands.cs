using Coldpath.Devices.Ratings;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// What a device's coil or loads take, from the numbers that its kind derives under these names: the burden and, for a coil
/// on alternating voltage while its armature is out, the inrush, in VA; the power factor. Empty when the kind derives none.
/// </summary>
internal static class BurdenBands
{
    private const string Voltage = "voltage";
    private const string Burden = "burden";
    private const string Inrush = "inrush";
    private const string Factor = "factor";

    /// <summary>A number that is derived for the band and is no rating of the device.</summary>
    public static bool IsBand(string name) =>
        new[] { Burden, Inrush, Factor }.Any(of => name == $"least {of}" || name == $"most {of}");

    /// <summary>Of each load, at the rating "voltage".</summary>
    public static IReadOnlyList<Burden> OfLoad(RatingBook ratings)
    {
        var direct = ratings[Voltage]?.Unit is { } unit && Arithmetic.IsDirect(unit);
        return Band(ratings, Burden, Expression.True, ratings[Voltage]?.Value, direct);
    }

    /// <summary>Of a coil, which takes its inrush while the armature is out.</summary>
    public static IReadOnlyList<Burden> OfCoil(RatingBook ratings, double? volts, bool direct, string armature) =>
        [
            .. Band(ratings, Inrush, new VariableIs(armature, Armature.Out), volts, direct),
            .. Band(ratings, Burden, Expression.True, volts, direct),
        ];

    private static Burden[] Band(RatingBook ratings, string name, Expression when, double? volts, bool direct)
    {
        if (ratings[$"least {name}"]?.Value is not { } least || ratings[$"most {name}"]?.Value is not { } most)
            return [];
        var (low, high) = (ratings[$"least {Factor}"]?.Value ?? 1, ratings[$"most {Factor}"]?.Value ?? 1);
        return [new(when, volts, direct, least, most, low, high)];
    }
}
