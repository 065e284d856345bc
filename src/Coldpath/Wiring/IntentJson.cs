using System.Text.Json;

namespace Coldpath.Wiring;

internal static class IntentJson
{
    public static void Members(Utf8JsonWriter json, Intent intent)
    {
        json.WriteString("form", NameOf(intent.Form));
        json.WriteOptional("of", intent.Of);
        WriteOperated(json, intent.By);
        json.WriteStrings("via", intent.Via);
        json.WriteExpression("when", intent.When);
        json.WriteBoolean("settled", intent.Settled);
        json.WriteBoolean("atOnce", intent.AtOnce);
        json.WriteNumber("failures", intent.Failures);
        json.WriteNumbers("span", intent.Span);
    }

    /// <summary>One text when one value counts as operated, a list when several do.</summary>
    private static void WriteOperated(Utf8JsonWriter json, IReadOnlyList<Operation> operated)
    {
        if (operated.Count == 1)
            json.WriteString("by", VariableJson.TextOf(operated[0]));
        else if (operated.Count > 1)
            json.WriteStrings("by", operated.Select(VariableJson.TextOf));
    }

    private static string NameOf(IntentForm form) =>
        form switch
        {
            IntentForm.Never => "never",
            IntentForm.Dead => "dead",
            IntentForm.Stops => "stops",
            _ => "can",
        };
}
