using System.Text.Json;
using Coldpath.Answers;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>What isolates a target, as JSON; its schema is <c>isolate.schema.json</c> beside this file.</summary>
public static class IsolateJson
{
    public static string Of(IsolateAnswer answer) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            json.WriteString("panel", answer.Panel);
            json.WriteBoolean("complete", answer.Complete);
            json.Strings("incomplete", answer.Incomplete);
            json.Strings("targets", answer.Targets);
            json.Exact("count", answer.Count);
            json.WriteBoolean("cut", answer.Cut);
            json.Items("sets", answer.Sets, set => WriteSet(json, set));
            json.Point("stays", answer.Stays);
            WriteHave(json, answer.Have);
            json.Items("staysLive", answer.StaysLive, json.Point);
            json.Items("wholeOnly", answer.WholeOnly, part => WriteWholeOnly(json, part));
            json.Strings("restsOn", answer.RestsOn);
            json.Strings("assumed", answer.Assumed);
            json.Strings("cautions", Cautions.All);
            json.WriteEndObject();
        });

    private static void WriteSet(Utf8JsonWriter json, IsolatingSet set)
    {
        json.WriteStartObject();
        json.Strings("devices", set.Isolators.Select(i => i.Device));
        json.Items("isolators", set.Isolators, isolator => WriteIsolator(json, isolator));
        json.Strings("acts", set.Acts);
        json.WriteEndObject();
    }

    private static void WriteIsolator(Utf8JsonWriter json, Isolator isolator)
    {
        json.WriteStartObject();
        json.WriteString("device", isolator.Device);
        json.WriteString("place", isolator.Place);
        json.WriteNumber("rank", isolator.Rank);
        json.WriteBoolean("lockable", isolator.Lockable);
        json.WriteBoolean("visibleBreak", isolator.VisibleBreak);
        json.WriteEndObject();
    }

    private static void WriteHave(Utf8JsonWriter json, OwnSet? have)
    {
        if (have is null)
        {
            json.WriteNull("have");
            return;
        }
        json.WriteStartObject("have");
        json.Strings("devices", have.Devices);
        json.WriteString("enough", WhyJson.Word(have.Enough));
        json.Strings("notIsolating", have.NotIsolating);
        json.Point("stays", have.Stays);
        json.Map("witness", have.Witness);
        json.WriteEndObject();
    }

    private static void WriteWholeOnly(Utf8JsonWriter json, WholeOnly part)
    {
        json.WriteStartObject();
        json.WriteString("part", part.Part);
        json.Strings("turns", part.Turns);
        json.WriteString("test", part.Test);
        json.WriteEndObject();
    }
}
