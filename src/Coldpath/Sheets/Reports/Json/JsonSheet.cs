using System.Buffers;
using System.Numerics;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coldpath.Answers;
using Coldpath.Findings;

namespace Coldpath.Sheets.Reports.Json;

/// <summary>What the JSON reports share: one layout (indented, LF), one version, one shape for places and steps.</summary>
internal static class JsonSheet
{
    /// <summary>Version of every schema beside this file.</summary>
    public const int Schema = 1;

    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The text that <paramref name="write"/> writes, ending in a line feed.</summary>
    public static string Write(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Layout))
            write(json);
        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    public static void Strings(this Utf8JsonWriter json, string name, IEnumerable<string> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
            json.WriteStringValue(item);
        json.WriteEndArray();
    }

    public static void Items<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
            write(item);
        json.WriteEndArray();
    }

    /// <summary>An integer with all its digits; null when there is none.</summary>
    public static void Exact(this Utf8JsonWriter json, string name, BigInteger? number)
    {
        json.WritePropertyName(name);
        if (number is { } n)
            json.WriteRawValue(n.ToString(System.Globalization.CultureInfo.InvariantCulture));
        else
            json.WriteNullValue();
    }

    public static void Map(
        this Utf8JsonWriter json,
        string name,
        IEnumerable<KeyValuePair<string, string>> entries
    )
    {
        json.WriteStartObject(name);
        foreach (var (key, value) in entries)
            json.WriteString(key, value);
        json.WriteEndObject();
    }

    public static void Location(this Utf8JsonWriter json, string name, Span span)
    {
        json.WriteStartObject(name);
        json.WriteString("file", span.Source.Name);
        json.Position("start", span.From);
        json.Position("end", span.To);
        json.WriteEndObject();
    }

    public static void Steps(this Utf8JsonWriter json, string name, IEnumerable<StoryStep> steps) =>
        json.Items(
            name,
            steps,
            step =>
            {
                json.WriteStartObject();
                json.WriteString("text", step.Text);
                json.WriteString("variable", step.Variable);
                json.WriteString("value", step.Value);
                json.WriteString("mover", step.Mover);
                json.WriteEndObject();
            }
        );

    /// <summary>What is said of a point: how it is live, from where, by what path.</summary>
    public static void Reach(this Utf8JsonWriter json, PointReach point)
    {
        json.WriteString("reach", Word(point.Reach));
        json.WriteBoolean("elv", point.ExtraLow);
        json.Strings("from", point.From);
        json.Strings("path", point.Path);
        json.WriteString("place", point.Place);
        json.WriteString("doubt", point.Doubt);
    }

    /// <summary>The same as an object that names its point; null when there is none.</summary>
    public static void Point(this Utf8JsonWriter json, string name, PointReach? point)
    {
        json.WritePropertyName(name);
        if (point is null)
            json.WriteNullValue();
        else
            json.Point(point);
    }

    public static void Point(this Utf8JsonWriter json, PointReach point)
    {
        json.WriteStartObject();
        json.WriteString("point", point.Point);
        json.Reach(point);
        json.WriteEndObject();
    }

    private static void Position(this Utf8JsonWriter json, string name, (int Line, int Column) position)
    {
        json.WriteStartObject(name);
        json.WriteNumber("line", position.Line);
        json.WriteNumber("column", position.Column);
        json.WriteEndObject();
    }

    private static string Word(Reach reach) =>
        reach switch
        {
            Answers.Reach.Dead => "dead",
            Answers.Reach.Solid => "solid",
            Answers.Reach.Load => "load",
            Answers.Reach.Backfeed => "backfeed",
            Answers.Reach.Stored => "stored",
            _ => "unknown",
        };
}
