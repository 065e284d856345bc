using Coldpath.Devices.Ratings;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// What a device's coil or loads take, in VA. A kind derives the range under the names "least burden" and "most burden", for a
/// coil that takes more while its armature is out also "least inrush" and "most inrush"; a coil's rating "burden" or "inrush"
/// goes before, within a tenth. Empty when nothing is said.
/// </summary>
internal static class BurdenBands
{
    private const string Voltage = "voltage";
    private const string Burden = "burden";
    private const string Inrush = "inrush";

    /// <summary>A coil's power factor with alternating voltage, closed or not; common practice.</summary>
    private static readonly (double Least, double Most) Inductive = (0.2, 0.8);
    private static readonly (double Least, double Most) Resistive = (1, 1);

    /// <summary>A given rating may be so much off; common practice.</summary>
    private const double Off = 0.1;

    /// <summary>The inrush of a coil is at most so many times its burden; common practice.</summary>
    private const double MostInrush = 15;

    /// <summary>A number that is derived for the range and is no rating of the device.</summary>
    public static bool IsBand(string name) =>
        new[] { Burden, Inrush }.Any(of => name == $"least {of}" || name == $"most {of}");

    /// <summary>Of each load, at the rating "voltage".</summary>
    public static IReadOnlyList<Burden> OfLoad(RatingBook ratings)
    {
        var rated = ratings[Voltage];
        return Derived(ratings, Burden) is { } range
            ?
            [
                Of(
                    Expression.True,
                    rated?.Value,
                    rated?.Unit is { } unit && Arithmetic.IsDirect(unit),
                    range,
                    Resistive
                ),
            ]
            : [];
    }

    /// <summary>Of a coil; with alternating voltage it takes its inrush while the armature is out.</summary>
    public static IReadOnlyList<Burden> OfCoil(
        RatingBook ratings,
        double? volts,
        bool direct,
        string armature
    )
    {
        var closed = Given(ratings, Burden);
        var open = Given(ratings, Inrush);
        if (open is null && closed is { } known)
            open = (known.Least, known.Most * MostInrush);
        return
        [
            .. direct || (open ?? Derived(ratings, Inrush)) is not { } inrush
                ? Array.Empty<Burden>()
                : [Of(new VariableIs(armature, Armature.Out), volts, direct, inrush, Inductive)],
            .. (closed ?? Derived(ratings, Burden)) is not { } burden
                ? Array.Empty<Burden>()
                : [Of(Expression.True, volts, direct, burden, Inductive)],
        ];
    }

    private static Burden Of(
        Expression when,
        double? volts,
        bool direct,
        (double Least, double Most) range,
        (double Least, double Most) factor
    ) => new(when, volts, direct, range.Least, range.Most, factor.Least, factor.Most);

    private static (double Least, double Most)? Given(RatingBook ratings, string name) =>
        ratings[name]?.Value is { } value ? ((1 - Off) * value, (1 + Off) * value) : null;

    private static (double Least, double Most)? Derived(RatingBook ratings, string name) =>
        ratings[$"least {name}"]?.Value is { } least && ratings[$"most {name}"]?.Value is { } most
            ? (least, most)
            : null;
}
