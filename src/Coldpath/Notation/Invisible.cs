using System.Globalization;

namespace Coldpath.Notation;

/// <summary>Characters that nobody sees: a text that holds one is not what it looks like.</summary>
internal static class Invisible
{
    /// <summary>Where the first one stands in a stretch of text, or null.</summary>
    public static int? In(string text, int start, int end)
    {
        for (var i = start; i < end; i++)
            if (Is(text[i]))
                return i;
        return null;
    }

    public static bool Is(char c) =>
        c < ' '
            ? c != '\t'
            : c >= '\x7F'
                && char.GetUnicodeCategory(c)
                    is UnicodeCategory.Control
                        or UnicodeCategory.Format
                        or UnicodeCategory.LineSeparator
                        or UnicodeCategory.ParagraphSeparator;
}
