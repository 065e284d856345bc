namespace Coldpath.Devices.Ratings;

/// <summary>
/// What a quantity is counted in: A, V (direct voltage apart: "V DC"), W, VA, var, Hz, s, m, mm2, ohm, H, F, Nm, rpm,
/// %, degC. A horsepower is 746 W (NEMA practice); a wire gauge converts to its copper cross-section.
/// </summary>
internal static class BaseUnits
{
    private static readonly Dictionary<string, BaseUnit> Known = new(StringComparer.Ordinal)
    {
        ["mA"] = new("A", 1e-3),
        ["A"] = new("A", 1),
        ["kA"] = new("A", 1e3),
        ["mV"] = new("V", 1e-3),
        ["V"] = new("V", 1),
        ["kV"] = new("V", 1e3),
        ["W"] = new("W", 1),
        ["kW"] = new("W", 1e3),
        ["MW"] = new("W", 1e6),
        ["hp"] = new("W", 746),
        ["VA"] = new("VA", 1),
        ["kVA"] = new("VA", 1e3),
        ["MVA"] = new("VA", 1e6),
        ["var"] = new("var", 1),
        ["kvar"] = new("var", 1e3),
        ["Hz"] = new("Hz", 1),
        ["kHz"] = new("Hz", 1e3),
        ["ms"] = new("s", 1e-3),
        ["s"] = new("s", 1),
        ["min"] = new("s", 60),
        ["h"] = new("s", 3600),
        ["mm"] = new("m", 1e-3),
        ["m"] = new("m", 1),
        ["km"] = new("m", 1e3),
        ["ft"] = new("m", 0.3048),
        ["mm2"] = new("mm2", 1),
        ["kcmil"] = new("mm2", 0.506707),
        ["mohm"] = new("ohm", 1e-3),
        ["ohm"] = new("ohm", 1),
        ["kohm"] = new("ohm", 1e3),
        ["Mohm"] = new("ohm", 1e6),
        ["mH"] = new("H", 1e-3),
        ["H"] = new("H", 1),
        ["uF"] = new("F", 1e-6),
        ["mF"] = new("F", 1e-3),
        ["F"] = new("F", 1),
        ["Nm"] = new("Nm", 1),
        ["rpm"] = new("rpm", 1),
        ["%"] = new("%", 1),
        ["degC"] = new("degC", 1),
    };

    private const string Gauge = "AWG";

    /// <summary>The base unit of a unit; the unit itself when it is not known.</summary>
    public static string Of(string unit)
    {
        var (plain, direct) = Split(unit);
        if (plain == Gauge)
            return "mm2";
        return (Known.TryGetValue(plain, out var known) ? known.Name : plain) + (direct ? " DC" : "");
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

    private sealed record BaseUnit(string Name, double Factor);
}
