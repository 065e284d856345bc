using System.Text.Json;

namespace Coldpath.Wiring;

/// <summary>The few shapes that every part of the exported netlist is made of.</summary>
internal static class JsonWriting
{
    public static void WriteStrings(this Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
            json.WriteStringValue(value);
        json.WriteEndArray();
    }

    public static void WriteObjects<T>(
        this Utf8JsonWriter json,
        string name,
        IEnumerable<T> items,
        Action<Utf8JsonWriter, T> members
    )
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            members(json, item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    public static void WriteObject<T>(
        this Utf8JsonWriter json,
        string name,
        T item,
        Action<Utf8JsonWriter, T> members
    )
    {
        json.WriteStartObject(name);
        members(json, item);
        json.WriteEndObject();
    }

    public static void WriteExpression(this Utf8JsonWriter json, string name, Expression expression)
    {
        json.WritePropertyName(name);
        ExpressionJson.Write(json, expression);
    }

    /// <summary>Resistance and reactance as a pair.</summary>
    public static void WriteOhms(this Utf8JsonWriter json, Ohms ohms) =>
        json.WriteRange("ohms", ohms.Resistance, ohms.Reactance);

    /// <summary>Two numbers as an array.</summary>
    public static void WriteRange(this Utf8JsonWriter json, string name, double first, double second)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(first);
        json.WriteNumberValue(second);
        json.WriteEndArray();
    }

    /// <summary>Left out when there is none.</summary>
    public static void WriteOptional(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
            json.WriteString(name, value);
    }

    public static void WriteNumbers(this Utf8JsonWriter json, string name, IEnumerable<int> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
            json.WriteNumberValue(value);
        json.WriteEndArray();
    }
}
