using System.Text;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>
/// Text being written, line by line, with line feeds only. What comes from a description is made harmless: control
/// characters and those that reverse the reading order print as a replacement sign, so that no file can draw on the
/// reader's terminal.
/// </summary>
public sealed class Page
{
    private readonly List<Run> runs = [];

    public IReadOnlyList<Run> Runs => runs;

    public Page Write(string text, Style style = Style.Plain)
    {
        if (text.Length > 0)
            runs.Add(new Run(Harmless(text), style));
        return this;
    }

    public Page Line(string text = "", Style style = Style.Plain)
    {
        Write(text, style);
        runs.Add(new Run("\n", Style.Plain));
        return this;
    }

    /// <summary>This page and another behind it.</summary>
    public Page Join(Page other)
    {
        runs.AddRange(other.runs);
        return this;
    }

    /// <summary>A heading and below it one indented line for each item; nothing at all without items.</summary>
    public Page Block(string heading, IReadOnlyCollection<string> items)
    {
        if (items.Count == 0)
            return this;
        Line(heading, Style.Strong);
        foreach (var item in items)
            Line("  " + item);
        return this;
    }

    /// <summary>Items one after another with commas, indented, broken before <paramref name="widest"/> columns.</summary>
    public Page Flow(IReadOnlyList<string> items, int widest = 100)
    {
        var line = " ";
        for (var i = 0; i < items.Count; i++)
        {
            var item = " " + items[i] + (i < items.Count - 1 ? "," : "");
            if (line.Length > 1 && Cells.Width(line) + Cells.Width(item) > widest)
            {
                Line(line);
                line = " ";
            }
            line += item;
        }
        return items.Count > 0 ? Line(line) : this;
    }

    /// <summary>The text alone.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (var run in runs)
            text.Append(run.Text);
        return text.ToString();
    }

    private static string Harmless(string text) =>
        text.Any(Harmful) ? string.Concat(text.Select(c => Harmful(c) ? '\uFFFD' : c)) : text;

    private static bool Harmful(char c) =>
        char.IsControl(c) || c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
