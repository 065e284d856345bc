using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli;

/// <summary>Puts a page on a writer, in colour where that is wanted.</summary>
internal static class Terminal
{
    public static void Print(Outside outside, Page page) =>
        Print(outside.Out, page, Colours(outside, outside.OutIsTerminal));

    public static void Complain(Outside outside, Page page) =>
        Print(outside.Error, page, Colours(outside, outside.ErrorIsTerminal));

    public static void Complain(Outside outside, string sentence) =>
        outside.Error.WriteLine("coldpath: " + sentence);

    /// <summary>Only on a terminal that knows colours, and not where NO_COLOR is set.</summary>
    private static bool Colours(Outside outside, bool terminal) =>
        terminal
        && string.IsNullOrEmpty(outside.Variable("NO_COLOR"))
        && outside.Variable("TERM") != "dumb"
        && (!OperatingSystem.IsWindows() || outside.Variable("WT_SESSION") is not null);

    private static void Print(TextWriter writer, Page page, bool colours)
    {
        foreach (var run in page.Runs)
        {
            var code = colours ? Code(run.Style) : "";
            if (code.Length == 0)
                writer.Write(run.Text);
            else
                writer.Write($"\u001b[{code}m{run.Text}\u001b[0m");
        }
    }

    private static string Code(Style style) =>
        style switch
        {
            Style.Strong => "1",
            Style.Faint => "2",
            Style.Danger => "1;31",
            Style.Defect => "31",
            Style.Caution => "33",
            Style.Note => "36",
            Style.Good => "32",
            _ => "",
        };
}
