using System.Text.Json;
using Coldpath.Findings;

namespace Coldpath.Sheets.Reports.Sarif;

/// <summary>The small shapes of a SARIF log.</summary>
internal static class SarifText
{
    public const string Base = "SRCROOT";

    public static void Message(this Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    public static void PhysicalLocation(this Utf8JsonWriter json, Span span)
    {
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", Uri(span.Source.Name));
        json.WriteString("uriBaseId", Base);
        json.WriteEndObject();
        json.WriteStartObject("region");
        json.WriteNumber("startLine", span.From.Line);
        json.WriteNumber("startColumn", span.From.Column);
        json.WriteNumber("endLine", span.To.Line);
        json.WriteNumber("endColumn", span.To.Column);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    public static string Level(Severity severity) =>
        severity switch
        {
            Severity.Danger or Severity.Defect => "error",
            Severity.Caution => "warning",
            _ => "note",
        };

    private static string Uri(string name) =>
        string.Join('/', name.Replace('\\', '/').Split('/').Select(System.Uri.EscapeDataString));
}
