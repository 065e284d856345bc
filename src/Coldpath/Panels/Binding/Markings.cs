using System.Globalization;
using Coldpath.Devices;

namespace Coldpath.Panels.Binding;

/// <summary>How the terminals of a device may be spoken of.</summary>
internal static class Markings
{
    /// <summary>The terminals that the kind itself gives, in its order; contacts of families come on top.</summary>
    public static IEnumerable<string> TerminalsOf(Blueprint blueprint) =>
        blueprint.Network.Nets.Where(n => !n.StartsWith('*') && n != blueprint.Network.Earth);

    /// <summary>Line and load side of each pole that a bare name passes.</summary>
    public static IReadOnlyList<(string Left, string Right)> PolesOf(Blueprint blueprint) =>
        [.. blueprint.Parts.Where(p => p.Through).SelectMany(p => p.Left.Zip(p.Right))];

    /// <summary>Terminals that are line side and load side at once, as of a busbar.</summary>
    public static bool IsBar(Blueprint blueprint) =>
        blueprint.LineSide.Count > 0
        && blueprint.LineSide.SequenceEqual(blueprint.LoadSide)
        && !IsStrip(blueprint);

    /// <summary>Any terminal that is named is there, as on a terminal strip.</summary>
    public static bool IsStrip(Blueprint blueprint) => blueprint.LineSide.Contains("*");

    /// <summary>Whether "1" or "L1" may stand for "1/L1".</summary>
    public static bool IsMarkOf(string mark, string terminal) =>
        terminal.Contains('/') && terminal.Split('/').Contains(mark);

    /// <summary>The marking's number, as of 1/L1; a number means its own terminal and no other one of the pole.</summary>
    public static bool IsNumber(string mark) => mark.All(char.IsAsciiDigit);

    /// <summary>Neutral and protective conductors join only where they are named.</summary>
    public static bool IsNeutralOrEarth(string terminal) =>
        terminal.Split('/').Any(m => m is "N" or "PE" or "PEN");

    /// <summary>What a conductor at this terminal is called when no supply has named it.</summary>
    public static string ConductorAt(string terminal) =>
        terminal.Split('/') is [_, _, ..] marks
            ? marks.FirstOrDefault(m => !IsNumber(m), terminal)
            : terminal;

    /// <summary>The number that stands for the star of "*3" in "13"; null when it does not fit.</summary>
    public static int? NumberIn(string terminal, string pattern)
    {
        var star = pattern.IndexOf('*');
        if (star < 0 || terminal.Length < pattern.Length)
            return null;
        var (before, after) = (pattern[..star], pattern[(star + 1)..]);
        if (
            !terminal.StartsWith(before, StringComparison.Ordinal)
            || !terminal.EndsWith(after, StringComparison.Ordinal)
        )
            return null;
        var digits = terminal[star..^after.Length];
        return digits.Length <= 3 && digits[0] != '0' && IsNumber(digits)
            ? int.Parse(digits, CultureInfo.InvariantCulture)
            : null;
    }

    public static string Numbered(string pattern, int number) =>
        pattern.Replace("*", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    /// <summary>The two halves of "13-14", for each dash that it might be split at.</summary>
    public static IEnumerable<(string Left, string Right)> PairsIn(string name)
    {
        for (var i = name.IndexOf('-'); i >= 0; i = name.IndexOf('-', i + 1))
            if (i > 0 && i < name.Length - 1)
                yield return (name[..i], name[(i + 1)..]);
    }
}
