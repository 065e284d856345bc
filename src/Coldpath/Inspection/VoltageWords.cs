using System.Globalization;
using Coldpath.Circuit.Phasors;

namespace Coldpath.Inspection;

/// <summary>What the solver finds, in words.</summary>
public static class VoltageWords
{
    /// <summary>"the solver finds 19 V across coil K1 (80 % of 24 V)"; with a band both its ends.</summary>
    public static string Of(CoilReading reading, string device, string part = "coil")
    {
        var (volts, rated) = (reading.Volts, reading.Rated);
        return volts.Unknown is { } reason
            ? $"what voltage {part} {device} gets is uncertain: {reason}"
            : $"the solver finds {Range(volts.Low, volts.High)} V across {part} {device} "
                + $"({Range(100 * volts.Low / rated, 100 * volts.High / rated)} % of {Number(rated)} V)";
    }

    /// <summary>"0.21 A, 14 V" of a step; amperes in mA when there are few.</summary>
    public static string Of(CurrentStep step)
    {
        var amperes = step.Amperes < 1 ? $"{Number(1000 * step.Amperes)} mA" : $"{Number(step.Amperes)} A";
        return step.Volts is > 0.05 and var volts ? $"{amperes}, {Number(volts)} V" : amperes;
    }

    private static string Range(double low, double high) =>
        Number(low) == Number(high) ? Number(low) : $"{Number(low)} to {Number(high)}";

    /// <summary>Two digits, or three from a hundred.</summary>
    private static string Number(double value) =>
        value < 0.005 ? "0"
        : value >= 10 ? Math.Round(value).ToString(CultureInfo.InvariantCulture)
        : value.ToString(value >= 1 ? "0.#" : "0.##", CultureInfo.InvariantCulture);
}
