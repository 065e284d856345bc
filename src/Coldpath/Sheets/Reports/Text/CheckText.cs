using Coldpath.Findings;
using Coldpath.Inspection;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>A check report: findings, notes in short, waived findings, then the summary.</summary>
public static class CheckText
{
    public static Page Of(CheckReport report)
    {
        var page = new Page();
        var open = report.Findings.Where(f => f.Waived is null).ToLookup(f => f.Severity == Severity.Note);
        foreach (var finding in open[false])
        {
            FindingText.Write(page, finding);
            page.Line();
        }
        WriteNotes(page, [.. open[true]]);
        WriteWaived(page, [.. report.Findings.Where(f => f.Waived is not null)]);
        WriteSummary(page, report);
        return page;
    }

    /// <summary>One line over several reports.</summary>
    public static Page Total(IReadOnlyCollection<CheckReport> reports)
    {
        var incomplete = reports.Count(r => !r.Complete);
        var page = new Page().Write(Count.Of(reports.Count, "panel") + ": ", Style.Strong);
        page.Write(BySeverity(reports.SelectMany(r => r.Findings)));
        return incomplete == 0 ? page.Line() : page.Line($"; {incomplete} not complete", Style.Danger);
    }

    private static void WriteNotes(Page page, IReadOnlyList<Finding> notes)
    {
        if (notes.Count == 0)
            return;
        page.Line("notes", Style.Strong);
        foreach (var note in notes)
            FindingText.WriteNote(page, note);
        page.Line();
    }

    private static void WriteWaived(Page page, IReadOnlyList<Finding> waived)
    {
        if (waived.Count == 0)
            return;
        page.Line("waived", Style.Strong);
        foreach (var finding in waived)
            FindingText.WriteWaived(page, finding);
        page.Line();
    }

    private static void WriteSummary(Page page, CheckReport report)
    {
        page.Write(report.Panel + ": ", Style.Strong).Line(BySeverity(report.Findings));
        if (!report.Readable)
        {
            page.Line("  not checked: the description could not be read", Style.Danger);
            return;
        }
        WriteCover(page, report);
        var made = $"  checks made: {report.ChecksMade.Count}";
        page.Line(report.NotChecked.Count > 0 ? $"{made}, not made: {report.NotChecked.Count}" : made);
        foreach (var missed in report.NotChecked.GroupBy(m => m.Reason, m => m.Check))
            page.Line($"    {string.Join(", ", missed)}: {missed.Key}", Style.Caution);
        if (report.Proved.Count > 0)
            page.Line($"  proved: {Count.Of(report.Proved.Count, "intent")}");
        foreach (var intent in report.Proved)
            page.Line($"    {intent}", Style.Good);
        if (report.Assumed.Count > 0)
            page.Line("  assumed:");
        foreach (var assumption in report.Assumed)
            page.Line($"    {assumption}");
    }

    private static void WriteCover(Page page, CheckReport report)
    {
        var states = report.States is { } n ? Count.Of(n, "state") : "no states";
        if (report.Complete)
            page.Line($"  covered: {states}, all that the panel can reach");
        else
            page.Line($"  NOT COMPLETE: {states} covered; what was not found may still exist", Style.Danger);
        page.Line(
            report.Failures == 0 ? "  failures: none reckoned with"
            : report.Failures == 1 ? $"  failures: any one of {Count.Exact(report.CanFail)}"
            : $"  failures: any {report.Failures} of {Count.Exact(report.CanFail)}"
        );
        foreach (var reason in report.Incomplete)
            page.Line($"    {reason}", Style.Danger);
    }

    private static string BySeverity(IEnumerable<Finding> findings)
    {
        var all = findings.ToArray();
        var open = all.Where(f => f.Waived is null).ToArray();
        var parts = new List<string>();
        for (var severity = Severity.Danger; severity >= Severity.Note; severity--)
            if (open.Count(f => f.Severity == severity) is > 0 and var number)
                parts.Add(Count.Of(number, FindingText.Word(severity)));
        var text = parts.Count == 0 ? "no findings" : string.Join(", ", parts);
        return all.Length > open.Length ? $"{text} ({all.Length - open.Length} waived)" : text;
    }
}
