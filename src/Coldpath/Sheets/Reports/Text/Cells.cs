using System.Globalization;
using System.Text;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>How many columns of a terminal a text takes.</summary>
internal static class Cells
{
    public static int Width(ReadOnlySpan<char> text)
    {
        var width = 0;
        foreach (var rune in text.EnumerateRunes())
            width += Width(rune);
        return width;
    }

    public static string Pad(string text, int width) =>
        text + new string(' ', Math.Max(0, width - Width(text)));

    private static int Width(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.NonSpacingMark
                or UnicodeCategory.EnclosingMark
                or UnicodeCategory.Format
            ? 0
        : IsWide(rune.Value) ? 2
        : 1;

    /// <summary>The blocks of Unicode standard annex 11 that are wide throughout.</summary>
    private static bool IsWide(int value) =>
        value
            is (>= 0x1100 and <= 0x115F)
                or (>= 0x2E80 and <= 0x303E)
                or (>= 0x3041 and <= 0xA4CF)
                or (>= 0xAC00 and <= 0xD7A3)
                or (>= 0xF900 and <= 0xFAFF)
                or (>= 0xFE30 and <= 0xFE6F)
                or (>= 0xFF00 and <= 0xFF60)
                or (>= 0xFFE0 and <= 0xFFE6)
                or (>= 0x1F300 and <= 0x1F64F)
                or (>= 0x1F900 and <= 0x1F9FF)
                or (>= 0x20000 and <= 0x3FFFD);
}
