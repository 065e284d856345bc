using Coldpath.Answers;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>Why a point is live, as JSON; its schema is <c>why.schema.json</c> beside this file.</summary>
public static class WhyJson
{
    public static string Of(WhyAnswer answer) =>
        JsonSheet.Write(json =>
        {
            json.WriteStartObject();
            json.WriteNumber("schema", JsonSheet.Schema);
            json.WriteString("panel", answer.Panel);
            json.WriteString("point", answer.Point);
            json.WriteString("canBeLive", Word(answer.CanBeLive));
            json.WriteBoolean("complete", answer.CanBeLive != Verdict.Open);
            json.Strings("incomplete", answer.Incomplete);
            json.Steps("story", answer.Story);
            json.Point("reach", answer.Reach);
            json.WriteString("proof", answer.Proof);
            json.Strings("restsOn", answer.RestsOn);
            json.Strings("assumed", answer.Assumed);
            json.Strings("cautions", Cautions.All);
            json.WriteEndObject();
        });

    internal static string Word(Verdict verdict) =>
        verdict switch
        {
            Verdict.Yes => "yes",
            Verdict.No => "no",
            _ => "open",
        };
}
