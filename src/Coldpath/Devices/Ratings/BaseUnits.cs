namespace Coldpath.Devices.Ratings;

/// <summary>
/// What a quantity is counted in: A, V (direct voltage apart: "V DC"), W, VA, var, Hz, s, m, mm2, ohm, H, F, Nm, rpm,
/// %, degC. A horsepower is 746 W (NEMA practice); a wire gauge converts to its copper cross-section.
/// </summary>
internal static class BaseUnits
{
    private static readonly Dictionary<string, (string Base, double Factor)> Known = new(
        StringComparer.Ordinal
    )
    {
        ["mA"] = ("A", 1e-3),
        ["A"] = ("A", 1),
        ["kA"] = ("A", 1e3),
        ["mV"] = ("V", 1e-3),
        ["V"] = ("V", 1),
        ["kV"] = ("V", 1e3),
        ["W"] = ("W", 1),
        ["kW"] = ("W", 1e3),
        ["MW"] = ("W", 1e6),
        ["hp"] = ("W", 746),
        ["VA"] = ("VA", 1),
        ["kVA"] = ("VA", 1e3),
        ["MVA"] = ("VA", 1e6),
        ["var"] = ("var", 1),
        ["kvar"] = ("var", 1e3),
        ["Hz"] = ("Hz", 1),
        ["kHz"] = ("Hz", 1e3),
        ["ms"] = ("s", 1e-3),
        ["s"] = ("s", 1),
        ["min"] = ("s", 60),
        ["h"] = ("s", 3600),
        ["mm"] = ("m", 1e-3),
        ["m"] = ("m", 1),
        ["km"] = ("m", 1e3),
        ["ft"] = ("m", 0.3048),
        ["mm2"] = ("mm2", 1),
        ["kcmil"] = ("mm2", 0.506707),
        ["mohm"] = ("ohm", 1e-3),
        ["ohm"] = ("ohm", 1),
        ["kohm"] = ("ohm", 1e3),
        ["Mohm"] = ("ohm", 1e6),
        ["mH"] = ("H", 1e-3),
        ["H"] = ("H", 1),
        ["uF"] = ("F", 1e-6),
        ["mF"] = ("F", 1e-3),
        ["F"] = ("F", 1),
        ["Nm"] = ("Nm", 1),
        ["rpm"] = ("rpm", 1),
        ["%"] = ("%", 1),
        ["degC"] = ("degC", 1),
    };

    private const string Gauge = "AWG";

    /// <summary>The base unit of a unit; the unit itself when it is not known.</summary>
    public static string Of(string unit)
    {
        var (plain, direct) = Split(unit);
        if (plain == Gauge)
            return "mm2";
        return (Known.TryGetValue(plain, out var known) ? known.Base : plain) + (direct ? " DC" : "");
    }

    /// <summary>The value in the base unit.</summary>
    public static double Convert(double value, string unit)
    {
        var (plain, _) = Split(unit);
        if (plain == Gauge)
            return GaugeSection(value);
        return Known.TryGetValue(plain, out var known) ? value * known.Factor : value;
    }

    /// <summary>Whether a rating in one unit may be given in another: "hp" for "W", "24 V DC" for "V".</summary>
    public static bool Fits(string given, string asked)
    {
        var (of, to) = (Of(given), Of(asked));
        return of == to || of == to + " DC";
    }

    /// <summary>Square millimetres of a gauge, 0 to −3 standing for 1/0 to 4/0 (ASTM B258: steps of 92^(1/39)).</summary>
    private static double GaugeSection(double gauge)
    {
        var millimetres = 0.127 * Math.Pow(92, (36 - gauge) / 39);
        return Math.PI / 4 * millimetres * millimetres;
    }

    private static (string Plain, bool Direct) Split(string unit) =>
        unit.EndsWith(" DC", StringComparison.Ordinal) ? (unit[..^3], true)
        : unit.EndsWith(" AC", StringComparison.Ordinal) ? (unit[..^3], false)
        : (unit, false);
}
