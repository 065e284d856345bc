using System.Text.Json;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>Check reports as JSON; its schema is <c>check.schema.json</c> beside this file.</summary>
public static class CheckJson
{
    /// <summary>The report of one description.</summary>
    public static string Of(CheckReport report) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            WriteReport(json, report);
            json.WriteEndObject();
        });

    /// <summary>Several reports in one document, under "panels".</summary>
    public static string Of(IReadOnlyCollection<CheckReport> reports) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            json.Items(
                "panels",
                reports,
                report =>
                {
                    json.WriteStartObject();
                    WriteReport(json, report);
                    json.WriteEndObject();
                }
            );
            json.WriteEndObject();
        });

    private static void WriteReport(Utf8JsonWriter json, CheckReport report)
    {
        json.WriteString("file", report.Source.Name);
        json.WriteString("panel", report.Panel);
        json.WriteBoolean("readable", report.Readable);
        json.WriteBoolean("complete", report.Complete);
        json.Strings("incomplete", report.Incomplete);
        json.Exact("states", report.States);
        json.WriteNumber("failures", report.Failures);
        json.WriteNumber("canFail", report.CanFail);
        json.Items("findings", report.Findings, finding => WriteFinding(json, finding));
        json.Strings("checksMade", report.ChecksMade);
        json.Items("notChecked", report.NotChecked, missed => WriteMissed(json, missed));
        json.Strings("proved", report.Proved);
        json.Strings("assumed", report.Assumed);
    }

    private static void WriteMissed(Utf8JsonWriter json, NotChecked missed)
    {
        json.WriteStartObject();
        json.WriteString("check", missed.Check);
        json.WriteString("reason", missed.Reason);
        json.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("code", finding.Code);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", FindingText.Word(finding.Severity));
        json.WriteString("message", finding.Message);
        json.Strings("devices", finding.Devices);
        json.Strings("points", finding.Points);
        json.Location("location", finding.Location);
        json.Items("related", finding.Related, label => WriteLabel(json, label));
        json.Steps("story", finding.Story);
        json.Strings("path", finding.Path);
        json.WriteString("reference", finding.Reference);
        json.WriteString("remedy", finding.Remedy);
        json.WriteString("waived", finding.Waived);
        json.WriteEndObject();
    }

    private static void WriteLabel(Utf8JsonWriter json, Label label)
    {
        json.WriteStartObject();
        json.WriteString("text", label.Text);
        json.Location("location", label.Span);
        json.WriteEndObject();
    }
}
