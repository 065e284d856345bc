using System.Text.Json;

namespace Coldpath.Wiring;

internal static class LoadJson
{
    public static void Members(Utf8JsonWriter json, Load load)
    {
        json.WriteString("name", load.Name);
        json.WriteStrings("elements", load.Elements);
        json.WriteStrings("terminals", load.Terminals);
        json.WriteObjects("modes", load.Modes, ModeMembers);
    }

    private static void ModeMembers(Utf8JsonWriter json, LoadMode mode)
    {
        json.WriteString("name", mode.Name);
        if (mode.Speed is { } speed)
            json.WriteNumber("speed", speed);
        json.WriteStrings("feed", mode.Feed);
        WritePairs(json, "joined", mode.Joined);
        WritePairs(json, "apart", mode.Apart);
        json.WriteString("turns", ExpressionJson.NameOf(mode.Turns));
    }

    private static void WritePairs(Utf8JsonWriter json, string name, IEnumerable<NetPair> pairs)
    {
        json.WriteStartArray(name);
        foreach (var pair in pairs)
        {
            json.WriteStartArray();
            json.WriteStringValue(pair.A);
            json.WriteStringValue(pair.B);
            json.WriteEndArray();
        }
        json.WriteEndArray();
    }
}
