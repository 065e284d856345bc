using System.Text.Json;
using Coldpath.Findings;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Sheets.Reports.Sarif;

/// <summary>A finding as a SARIF result.</summary>
internal static class SarifResult
{
    public static void Write(Utf8JsonWriter json, Finding finding, SarifRules rules)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Code);
        json.WriteNumber("ruleIndex", rules.IndexOf(finding.Code));
        json.WriteString("level", SarifText.Level(finding.Severity));
        json.Message("message", finding.Message);
        json.Items("locations", [finding], f => WriteLocation(json, f));
        if (finding.Related.Count > 0)
            json.Items("relatedLocations", finding.Related.Index(), r => WriteRelated(json, r.Item, r.Index));
        WriteFlows(json, finding);
        WriteSuppression(json, finding.Waived);
        WriteFingerprint(json, finding);
        WriteProperties(json, finding);
        json.WriteEndObject();
    }

    private static void WriteLocation(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.PhysicalLocation(finding.Location);
        if (finding.Devices.Count + finding.Points.Count > 0)
            json.Items(
                "logicalLocations",
                finding
                    .Devices.Select(d => (Name: d, Kind: "device"))
                    .Concat(finding.Points.Select(p => (Name: p, Kind: "terminal"))),
                place => WriteLogical(json, place.Name, place.Kind)
            );
        json.WriteEndObject();
    }

    private static void WriteLogical(Utf8JsonWriter json, string name, string kind)
    {
        json.WriteStartObject();
        json.WriteString("fullyQualifiedName", name);
        json.WriteString("kind", kind);
        json.WriteEndObject();
    }

    private static void WriteRelated(Utf8JsonWriter json, Label label, int index)
    {
        json.WriteStartObject();
        json.WriteNumber("id", index);
        json.PhysicalLocation(label.Span);
        json.Message("message", label.Text);
        json.WriteEndObject();
    }

    /// <summary>The story and the conducting path, each a flow of its own.</summary>
    private static void WriteFlows(Utf8JsonWriter json, Finding finding)
    {
        if (finding.Story.Count + finding.Path.Count == 0)
            return;
        json.WriteStartArray("codeFlows");
        if (finding.Story.Count > 0)
            WriteFlow(
                json,
                "the shortest story",
                finding.Story,
                s => WriteStep(json, finding.Location, s.Text)
            );
        if (finding.Path.Count > 0)
            WriteFlow(json, "the conducting path", finding.Path, p => WriteStop(json, finding.Location, p));
        json.WriteEndArray();
    }

    private static void WriteFlow<T>(
        Utf8JsonWriter json,
        string message,
        IEnumerable<T> stops,
        Action<T> writeLocation
    )
    {
        json.WriteStartObject();
        json.Message("message", message);
        json.WriteStartArray("threadFlows");
        json.WriteStartObject();
        json.Items(
            "locations",
            stops,
            stop =>
            {
                json.WriteStartObject();
                writeLocation(stop);
                json.WriteEndObject();
            }
        );
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteStep(Utf8JsonWriter json, Span place, string text)
    {
        json.WriteStartObject("location");
        json.PhysicalLocation(place);
        json.Message("message", text);
        json.WriteEndObject();
    }

    private static void WriteStop(Utf8JsonWriter json, Span place, string point)
    {
        json.WriteStartObject("location");
        json.PhysicalLocation(place);
        json.Items("logicalLocations", [point], name => WriteLogical(json, name, "terminal"));
        json.Message("message", point);
        json.WriteEndObject();
    }

    private static void WriteSuppression(Utf8JsonWriter json, string? reason) =>
        json.Items(
            "suppressions",
            reason is null ? Array.Empty<string>() : [reason],
            because =>
            {
                json.WriteStartObject();
                json.WriteString("kind", "inSource");
                json.WriteString("status", "accepted");
                json.WriteString("justification", because);
                json.WriteEndObject();
            }
        );

    /// <summary>What stays the same when lines move.</summary>
    private static void WriteFingerprint(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject("partialFingerprints");
        string[] parts = [finding.Code, .. finding.Devices, .. finding.Points];
        json.WriteString("devices/v1", string.Join(' ', parts));
        json.WriteEndObject();
    }

    private static void WriteProperties(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject("properties");
        json.WriteString("severity", FindingText.Word(finding.Severity));
        if (finding.Remedy is { } remedy)
            json.WriteString("remedy", remedy);
        if (finding.Reference is { } reference)
            json.WriteString("reference", reference);
        json.WriteEndObject();
    }
}
