using System.Text.Json;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;

namespace Coldpath.Sheets.Reports.Sarif;

/// <summary>
/// Check reports as one SARIF 2.1.0 run (OASIS, Static Analysis Results Interchange Format). Source names are taken as
/// URIs relative to the base that is called SRCROOT; its own place is left out, so that the log is the same on every
/// machine.
/// </summary>
public static class SarifLog
{
    private const string Published =
        "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    /// <param name="reports">One for each description.</param>
    /// <param name="cards">All checks; findings of the parser bring rules of their own.</param>
    /// <param name="version">Of the tool.</param>
    public static string Of(
        IReadOnlyCollection<CheckReport> reports,
        IEnumerable<Card> cards,
        string version
    ) =>
        JsonSheet.Write(json =>
        {
            var rules = SarifRules.From(cards, reports.SelectMany(r => r.Findings));
            json.WriteStartObject();
            json.WriteString("$schema", Published);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteTool(json, rules, version);
            SarifInvocation.Write(json, reports, rules);
            WriteBase(json);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.Items(
                "results",
                reports.SelectMany(r => r.Findings),
                f => SarifResult.Write(json, f, rules)
            );
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        });

    private static void WriteTool(Utf8JsonWriter json, SarifRules rules, string version)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "coldpath");
        json.WriteString("semanticVersion", version);
        rules.Write(json);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteBase(Utf8JsonWriter json)
    {
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(SarifText.Base);
        json.Message("description", "The root of the repository, or the working directory outside one.");
        json.WriteEndObject();
        json.WriteEndObject();
    }
}
