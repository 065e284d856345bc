namespace Coldpath.Sheets.Drawings;

/// <summary>
/// Text that may stand in a drawing: control characters, those that turn the reading order, and halves of surrogate
/// pairs become a replacement sign, as in reports.
/// </summary>
public static class Harmless
{
    public static string Text(string text)
    {
        for (var i = 0; i < text.Length; i++)
            if (IsHarmful(text, i))
                return Replaced(text);
        return text;
    }

    private static string Replaced(string text) =>
        string.Create(
            text.Length,
            text,
            static (letters, source) =>
            {
                for (var i = 0; i < source.Length; i++)
                    letters[i] = IsHarmful(source, i) ? '\uFFFD' : source[i];
            }
        );

    private static bool IsHarmful(string text, int i)
    {
        var c = text[i];
        return char.IsControl(c)
            || c is '\u2028' or '\u2029' or '\u200E' or '\u200F' or '\u061C' or '\uFFFE' or '\uFFFF'
            || c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069')
            || IsHalf(text, i);
    }

    private static bool IsHalf(string text, int i) =>
        char.IsHighSurrogate(text[i])
            ? i + 1 >= text.Length || !char.IsLowSurrogate(text[i + 1])
            : char.IsLowSurrogate(text[i]) && (i == 0 || !char.IsHighSurrogate(text[i - 1]));
}
