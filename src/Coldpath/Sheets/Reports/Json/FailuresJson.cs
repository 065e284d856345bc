using System.Text.Json;
using Coldpath.Answers;
using Coldpath.Circuit.Failures;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>Which failures suffice, as JSON; its schema is <c>failures.schema.json</c> beside this file.</summary>
public static class FailuresJson
{
    public static string Of(FailuresAnswer answer) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            json.WriteString("panel", answer.Panel);
            json.WriteString("question", answer.Question);
            json.WriteNumber("most", answer.Most);
            json.WriteBoolean("complete", answer.Complete);
            json.Strings("incomplete", answer.Incomplete);
            json.Exact("count", answer.Question is null ? null : answer.Count);
            json.Items("sets", answer.Sets, set => WriteSet(json, set));
            json.Items("stories", answer.Sets, set => WriteStory(json, set));
            json.Items("failures", answer.Failures, failure => WriteFailure(json, failure));
            json.Strings("restsOn", answer.RestsOn);
            json.Strings("assumed", answer.Assumed);
            json.Strings("cautions", Cautions.All);
            json.WriteEndObject();
        });

    private static void WriteSet(Utf8JsonWriter json, Combination set)
    {
        json.WriteStartArray();
        foreach (var name in set.Failures)
            json.WriteStringValue(name);
        json.WriteEndArray();
    }

    private static void WriteStory(Utf8JsonWriter json, Combination set)
    {
        json.WriteStartObject();
        json.WriteBoolean("uncertain", set.Uncertain);
        json.Steps("steps", set.Story);
        json.WriteEndObject();
    }

    private static void WriteFailure(Utf8JsonWriter json, FailureTold failure)
    {
        json.WriteStartObject();
        json.WriteString("name", failure.Variable);
        json.WriteString("device", failure.Device);
        json.WriteString("says", failure.Says);
        json.WriteString("disclosure", Word(failure.Disclosure));
        json.Strings("shows", failure.Shows);
        json.Steps("story", failure.Story);
        json.WriteEndObject();
    }

    private static string Word(Disclosure disclosure) =>
        disclosure switch
        {
            Disclosure.Hidden => "hidden",
            Disclosure.Revealed => "revealed",
            _ => "impossible",
        };
}
