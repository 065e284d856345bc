using System.Text.Json;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;

namespace Coldpath.Sheets.Reports.Sarif;

/// <summary>How the run went: successful only when every search was complete; checks that could not be made.</summary>
internal static class SarifInvocation
{
    public static void Write(Utf8JsonWriter json, IReadOnlyCollection<CheckReport> reports, SarifRules rules)
    {
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", reports.All(r => r.Complete && r.Readable));
        json.Items(
            "toolExecutionNotifications",
            reports.SelectMany(Notices),
            notice => WriteNotice(json, notice, rules)
        );
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static IEnumerable<Notice> Notices(CheckReport report)
    {
        foreach (var reason in report.Incomplete)
            yield return new Notice("error", $"{report.Panel}: not complete: {reason}", null);
        if (!report.Readable)
            yield return new Notice("error", $"{report.Panel}: the description could not be read", null);
        foreach (var missed in report.NotChecked)
            yield return new Notice("warning", $"{report.Panel}: not checked: {missed.Reason}", missed.Check);
    }

    private static void WriteNotice(Utf8JsonWriter json, Notice notice, SarifRules rules)
    {
        json.WriteStartObject();
        json.WriteString("level", notice.Level);
        json.Message("message", notice.Text);
        if (notice.Check is { } check && rules.CodeOf(check) is { } code)
        {
            json.WriteStartObject("associatedRule");
            json.WriteString("id", code);
            json.WriteNumber("index", rules.IndexOf(code));
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private sealed record Notice(string Level, string Text, string? Check);
}
