using Coldpath.Answers;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>What is live, as JSON; its schema is <c>live.schema.json</c> beside this file.</summary>
public static class LiveJson
{
    public static string Of(LiveAnswer answer) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            json.WriteString("panel", answer.Panel);
            json.WriteBoolean("complete", answer.Complete);
            json.Strings("incomplete", answer.Incomplete);
            json.WriteString("start", answer.Start);
            json.Steps("steps", answer.Steps);
            json.WriteString("settled", Word(answer.Settled));
            json.Map("state", answer.State);
            json.WriteStartObject("points");
            foreach (var point in answer.Points)
            {
                json.WriteStartObject(point.Point);
                json.Reach(point);
                json.WriteEndObject();
            }
            json.WriteEndObject();
            json.Map("loads", answer.Loads);
            json.Strings("restsOn", answer.RestsOn);
            json.Strings("assumed", answer.Assumed);
            json.Strings("cautions", Cautions.All);
            json.WriteEndObject();
        });

    private static string Word(Settled settled) =>
        settled switch
        {
            Settled.Steady => "steady",
            Settled.Chatter => "chatter",
            _ => "short",
        };
}
