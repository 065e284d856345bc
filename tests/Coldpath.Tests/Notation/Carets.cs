using System.Text;
using Coldpath.Findings;
using Coldpath.Notation;

namespace Coldpath.Tests.Notation;

/// <summary>
/// A source with its expected findings drawn into it: below a row, carets under the span and behind them code,
/// message and, in brackets, the remedy.
/// </summary>
internal static class Carets
{
    /// <summary>The source with the findings that it really gives drawn in.</summary>
    public static string Draw(string annotated) => Draw(annotated, s => PanelParser.Parse(s).Findings);

    /// <summary>The same with the findings of a later stage.</summary>
    public static string Draw(string annotated, Func<SourceText, IReadOnlyList<Finding>> find)
    {
        var rows = annotated.ReplaceLineEndings("\n").Split('\n').Where(r => !r.TrimStart().StartsWith('^'));
        var source = new SourceText("test.panel", string.Join('\n', rows));
        var findings = find(source).ToLookup(f => f.Location.From.Line);
        var text = new StringBuilder();
        for (var line = 1; line <= source.LineCount; line++)
        {
            text.Append(line > 1 ? "\n" : "").Append(source.Line(line));
            foreach (var finding in findings[line])
                text.Append('\n').Append(Caret(finding));
        }
        return text.ToString();
    }

    private static string Caret(Finding finding)
    {
        var width = Math.Max(1, finding.Location.End - finding.Location.Start);
        var carets = new string(' ', finding.Location.From.Column - 1) + new string('^', width);
        return $"{carets} {finding.Code} {finding.Message}"
            + (finding.Remedy is null ? "" : $" ({finding.Remedy})");
    }
}
