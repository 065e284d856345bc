using Coldpath.Findings;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>A source line with a mark under a span of it.</summary>
internal static class Excerpt
{
    /// <summary>Columns of source shown at most; a longer line is cut around the span.</summary>
    private const int Widest = 120;

    public static void Write(Page page, Span span, string label, char mark, Style style)
    {
        var (line, column) = span.From;
        var (lastLine, lastColumn) = span.To;
        var text = span.Source.Line(line);
        var start = Math.Min(column - 1, text.Length);
        var end = lastLine == line ? Math.Clamp(lastColumn - 1, start, text.Length) : text.Length;
        if (lastLine > line)
            label = label.Length > 0 ? $"{label} (to line {lastLine})" : $"to line {lastLine}";
        var (before, marked, after) = Window(text, start, end);
        var number = line.ToString(System.Globalization.CultureInfo.InvariantCulture).PadLeft(4);
        var gutter = new string(' ', number.Length);
        page.Line($"{gutter} |", Style.Faint);
        page.Write($"{number} | ", Style.Faint).Line((before + marked + after).TrimEnd());
        page.Write($"{gutter} | ", Style.Faint)
            .Write(new string(' ', Cells.Width(before)))
            .Line((new string(mark, Math.Max(1, Cells.Width(marked))) + " " + label).TrimEnd(), style);
    }

    private static (string Before, string Marked, string After) Window(string text, int start, int end)
    {
        var from = start > Widest / 2 && text.Length > Widest ? Whole(text, start - Widest / 2) : 0;
        var to = text.Length - from > Widest ? Whole(text, from + Widest) : text.Length;
        var stop = Math.Min(end, to);
        return (
            (from > 0 ? "…" : "") + Flat(text[from..start]),
            Flat(text[start..stop]),
            Flat(text[stop..to]) + (to < text.Length ? "…" : "")
        );
    }

    /// <summary>A place to cut that splits no surrogate pair.</summary>
    private static int Whole(string text, int at) =>
        at > 0 && at < text.Length && char.IsLowSurrogate(text[at]) ? at - 1 : at;

    private static string Flat(string text) => text.Replace("\t", "    ", StringComparison.Ordinal);
}
