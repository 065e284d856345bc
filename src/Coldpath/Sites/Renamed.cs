using Coldpath.Findings;
using Coldpath.Inspection;

namespace Coldpath.Sites;

/// <summary>A report with the names of other panels where stand-ins stood.</summary>
internal static class Renamed
{
    public static CheckReport Of(CheckReport report, StandIns names) =>
        report with
        {
            Findings = [.. report.Findings.Select(f => Of(f, names))],
            Incomplete = Of(report.Incomplete, names),
            NotChecked = [.. report.NotChecked.Select(n => n with { Reason = names.Undo(n.Reason) })],
            Assumed = Of(report.Assumed, names),
        };

    private static Finding Of(Finding finding, StandIns names) =>
        finding with
        {
            Message = names.Undo(finding.Message),
            Devices = Of(finding.Devices, names),
            Points = Of(finding.Points, names),
            Related = [.. finding.Related.Select(l => l with { Text = names.Undo(l.Text) })],
            Story = [.. finding.Story.Select(s => Of(s, names))],
            Path = Of(finding.Path, names),
            Remedy = finding.Remedy is { } remedy ? names.Undo(remedy) : null,
        };

    private static StoryStep Of(StoryStep step, StandIns names) =>
        step with
        {
            Text = names.Undo(step.Text),
            Variable = step.Variable is { } variable ? names.Undo(variable) : null,
        };

    private static IReadOnlyList<string> Of(IReadOnlyList<string> texts, StandIns names) =>
        [.. texts.Select(names.Undo)];
}
