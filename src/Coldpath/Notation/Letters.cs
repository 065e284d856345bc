using Antlr4.Runtime;

namespace Coldpath.Notation;

/// <summary>A text as the grammar sees it: one ASCII character for each class of others. Offsets stay the same.</summary>
internal sealed class Letters : BaseInputCharStream
{
    private const char Unseen = '\u0001';
    private const char Unknown = '~';
    private readonly string text;

    public Letters(string text)
    {
        this.text = text;
        n = text.Length;
    }

    protected override int ValueAt(int i) => text[i] < '\x80' ? text[i] : Class(text[i]);

    protected override string ConvertDataToString(int start, int count) => text.Substring(start, count);

    private static char Class(char c) =>
        char.IsLetter(c) ? 'a'
        : char.IsNumber(c) || IsMark(c) ? '_'
        : Invisible.Is(c) ? Unseen
        : char.IsSeparator(c) ? ' '
        : Unknown;

    private static bool IsMark(char c) =>
        char.GetUnicodeCategory(c)
            is System.Globalization.UnicodeCategory.NonSpacingMark
                or System.Globalization.UnicodeCategory.SpacingCombiningMark
                or System.Globalization.UnicodeCategory.EnclosingMark;
}
