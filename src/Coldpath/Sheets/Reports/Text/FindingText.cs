using Coldpath.Findings;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>
/// One finding as the user reads it: message, place, source line with a mark under the span, other places, story,
/// path, reference, help.
/// </summary>
public static class FindingText
{
    public static void Write(Page page, Finding finding)
    {
        var style = StyleOf(finding.Severity);
        page.Write($"{Word(finding.Severity)}[{finding.Code} {finding.Name}]", style)
            .Write(": ")
            .Line(finding.Message, Style.Strong);
        page.Line("  " + Place(finding.Location), Style.Faint);
        Excerpt.Write(page, finding.Location, "", '^', style);
        foreach (var label in finding.Related)
            WriteRelated(page, finding.Location, label);
        WriteStory(page, finding.Story);
        WritePath(page, finding.Path);
        WriteField(page, "reference", finding.Reference);
        WriteField(page, "help", finding.Remedy);
    }

    /// <summary>A note in short: where, what, and after what story in one line.</summary>
    public static void WriteNote(Page page, Finding finding)
    {
        page.Line($"  {Place(finding.Location)}: {finding.Message} [{finding.Code} {finding.Name}]");
        if (finding.Story.Count > 0)
            page.Line($"    after: {string.Join("; ", finding.Story.Select(step => step.Text))}");
    }

    /// <summary>A waived finding on two lines: what was found, and why it is accepted.</summary>
    public static void WriteWaived(Page page, Finding finding) =>
        page.Line($"  {Place(finding.Location)}: {finding.Message} [{finding.Code} {finding.Name}]")
            .Line($"    because \"{finding.Waived}\"", Style.Faint);

    public static void WriteStory(Page page, IReadOnlyList<StoryStep> story)
    {
        if (story.Count == 0)
            return;
        page.Line("  story:", Style.Strong);
        var width = $"{story.Count}".Length;
        for (var i = 0; i < story.Count; i++)
            page.Line($"    {$"{i + 1}".PadLeft(width)}. {story[i].Text}");
    }

    public static void WritePath(Page page, IReadOnlyList<string> path) =>
        WriteField(page, "path", path.Count == 0 ? null : string.Join(" -> ", path));

    /// <summary>"file:line:column".</summary>
    public static string Place(Span span) => $"{span.Source.Name}:{span.From.Line}:{span.From.Column}";

    public static string Word(Severity severity) =>
        severity switch
        {
            Severity.Danger => "danger",
            Severity.Defect => "defect",
            Severity.Caution => "caution",
            _ => "note",
        };

    private static void WriteRelated(Page page, Span main, Label label)
    {
        if (label.Span.Source != main.Source)
            page.Line("  " + Place(label.Span), Style.Faint);
        Excerpt.Write(page, label.Span, label.Text, '-', Style.Note);
    }

    private static void WriteField(Page page, string name, string? text)
    {
        if (text is { Length: > 0 })
            page.Write($"  {name}: ", Style.Strong).Line(text);
    }

    private static Style StyleOf(Severity severity) =>
        severity switch
        {
            Severity.Danger => Style.Danger,
            Severity.Defect => Style.Defect,
            Severity.Caution => Style.Caution,
            _ => Style.Note,
        };
}
