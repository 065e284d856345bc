using System.Collections.Frozen;

namespace Coldpath.Notation;

/// <summary>The units that may follow a number. How they convert is for whoever uses the number.</summary>
public static class Units
{
    private static readonly FrozenSet<string> Known = Set(
        "mA A kA mV V kV W kW MW VA kVA MVA var kvar hp AWG kcmil mm2 mm m km ft % ms s min h Hz kHz rpm "
            + "mohm ohm kohm Mohm uF mF F mH H Nm degC"
    );

    /// <summary>Units that may be followed by DC or AC: "24 V DC" has the unit "V DC".</summary>
    private static readonly FrozenSet<string> WithCurrentSort = Set("mV V kV mA A kA");

    /// <summary>In no order.</summary>
    public static IReadOnlyCollection<string> All => Known;

    public static bool IsUnit(string word) => Known.Contains(word);

    /// <summary>Whether "DC" or "AC" behind this unit belongs to it.</summary>
    public static bool TakesCurrentSort(string unit, string word) =>
        word is "DC" or "AC" && WithCurrentSort.Contains(unit);

    /// <summary>A unit, with or without DC or AC behind it: "V", "V DC".</summary>
    public static bool IsUnitWithSort(string text) =>
        IsUnit(text) || (text.Split(' ') is [var unit, var sort] && TakesCurrentSort(unit, sort));

    private static FrozenSet<string> Set(string words) =>
        words.Split(' ').ToFrozenSet(StringComparer.Ordinal);
}
