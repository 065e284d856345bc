using System.Text.Json;

namespace Coldpath.Wiring;

internal static class DeviceJson
{
    public static void Members(Utf8JsonWriter json, NetlistDevice device)
    {
        json.WriteString("tag", device.Tag);
        json.WriteString("panel", device.Panel);
        json.WriteString("kind", device.Kind);
        json.WriteOptional("place", device.Place);
        json.WriteString("use", NameOf(device.Use));
        json.WriteBoolean("emergency", device.Emergency);
        if (device.Elsewhere)
            json.WriteBoolean("elsewhere", true);
        json.WriteObjects("protects", device.Protects, ProtectionMembers);
        if (device.Isolates is { } isolation)
            json.WriteObject("isolates", isolation, IsolationMembers);
        json.WriteObjects("opensOnShort", device.OpensOnShort, OpeningMembers);
        WriteStates(json, device.States);
        WriteRatings(json, device.Ratings);
        json.WriteNumbers("span", device.Span);
    }

    private static void ProtectionMembers(Utf8JsonWriter json, Protection protection)
    {
        json.WriteString("against", protection.Against);
        json.WriteStrings("elements", protection.Elements);
        json.WriteString("variable", protection.Variable);
    }

    private static void IsolationMembers(Utf8JsonWriter json, Isolation isolation)
    {
        json.WriteString("variable", isolation.Variable);
        json.WriteStrings("elements", isolation.Elements);
        json.WriteBoolean("lockable", isolation.Lockable);
        json.WriteBoolean("visible", isolation.Visible);
        json.WriteNumber("rank", isolation.Rank);
    }

    private static void OpeningMembers(Utf8JsonWriter json, ShortOpening opening)
    {
        json.WriteString("variable", opening.Variable);
        json.WriteString("to", opening.To);
        json.WriteStrings("elements", opening.Elements);
        if (opening.Breaks is { } kiloamperes)
            json.WriteNumber("breaks_kA", kiloamperes);
    }

    private static void WriteStates(Utf8JsonWriter json, IEnumerable<KeyValuePair<string, Expression>> states)
    {
        json.WriteStartObject("states");
        foreach (var (name, condition) in states)
            json.WriteExpression(name, condition);
        json.WriteEndObject();
    }

    private static void WriteRatings(Utf8JsonWriter json, IEnumerable<KeyValuePair<string, string>> ratings)
    {
        json.WriteStartObject("ratings");
        foreach (var (name, value) in ratings)
            json.WriteString(name, value);
        json.WriteEndObject();
    }

    private static string NameOf(ControlUse use) =>
        use switch
        {
            ControlUse.Stop => "stop",
            ControlUse.Start => "start",
            ControlUse.Mode => "mode",
            _ => "none",
        };
}
