using System.Globalization;
using System.Text;

namespace Coldpath.Sheets.Drawings;

/// <summary>
/// How wide letters are, from the advance widths of the metric-compatible sans-serif faces that every system has
/// under one of the names in <see cref="Families"/>. Pairs are not drawn closer together.
/// </summary>
public static class LetterWidths
{
    /// <summary>Asked for in this order.</summary>
    public const string Families = "Arial, Helvetica, 'Liberation Sans', sans-serif";

    /// <summary>Above and below the baseline, in parts of the font size.</summary>
    public const double Ascent = 0.75;
    public const double Descent = 0.22;

    /// <summary>Of letters that the table does not hold, in parts of the font size: on the wide side.</summary>
    private const double Unknown = 0.75;
    private const double Wide = 1;
    private const double Picture = 1.4;

    private static readonly Lazy<LetterTable> Table = new(LetterTable.Load);

    /// <summary>Length of a text in millimetres.</summary>
    public static double Of(string text, double size, bool bold)
    {
        var sum = 0.0;
        foreach (var rune in Harmless.Text(text).EnumerateRunes())
            sum += Table.Value.Of(rune.Value, bold) ?? Default(rune);
        return Math.Round(sum * size, 4);
    }

    /// <summary>Whether the width of a letter is known and not assumed.</summary>
    public static bool Knows(Rune rune) => Table.Value.Of(rune.Value, false) is not null;

    private static double Default(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.NonSpacingMark
                or UnicodeCategory.EnclosingMark
                or UnicodeCategory.Format
            ? 0
        : rune.Value is >= 0x1F000 and <= 0x1FAFF ? Picture
        : rune.Value is >= 0x1100 and <= 0x11FF or >= 0x2E80 and <= 0xD7FF or >= 0xF900 ? Wide
        : Unknown;
}
