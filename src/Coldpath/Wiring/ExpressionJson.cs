using System.Text.Json;

namespace Coldpath.Wiring;

/// <summary>Writes a condition as the GUARD or EXPR of the exported netlist.</summary>
internal static class ExpressionJson
{
    public static void Write(Utf8JsonWriter json, Expression expression)
    {
        if (expression is Constant constant)
        {
            json.WriteBooleanValue(constant.Value);
            return;
        }
        json.WriteStartObject();
        WriteMembers(json, expression);
        json.WriteEndObject();
    }

    private static void WriteMembers(Utf8JsonWriter json, Expression expression)
    {
        switch (expression)
        {
            case VariableIs v:
                json.WriteString("var", v.Variable);
                json.WriteString("is", v.Value);
                break;
            case Not n:
                json.WritePropertyName("not");
                Write(json, n.Term);
                break;
            case All all:
                WriteTerms(json, "all", all.Terms);
                break;
            case Any any:
                WriteTerms(json, "any", any.Terms);
                break;
            default:
                WritePredicate(json, expression);
                break;
        }
    }

    private static void WriteTerms(Utf8JsonWriter json, string name, IEnumerable<Expression> terms)
    {
        json.WriteStartArray(name);
        foreach (var term in terms)
            Write(json, term);
        json.WriteEndArray();
    }

    private static void WritePredicate(Utf8JsonWriter json, Expression predicate)
    {
        switch (predicate)
        {
            case Energised e:
                WriteNets(json, "energised", e.A, e.B);
                json.WriteString("grade", NameOf(e.Grade));
                WriteBand(json, e.Low, e.High);
                break;
            case Carries c:
                json.WriteString("carries", c.Element);
                break;
            case Closed c:
                json.WriteString("closed", c.Element);
                break;
            case Fed f:
                WriteNets(json, "fed", f.A, f.B, f.C);
                json.WriteString("order", NameOf(f.Order));
                json.WriteString("grade", NameOf(f.Grade));
                break;
            case SinglePhased s:
                WriteNets(json, "single", s.A, s.B, s.C);
                break;
            case Joined j:
                WriteNets(json, "joined", j.A, j.B);
                break;
            case Live l:
                json.WriteString("live", l.Net);
                break;
            case Runs r:
                json.WriteString("runs", r.Load);
                json.WriteString("turns", NameOf(r.Turns));
                break;
            case InShort s:
                json.WriteString("short", s.Supply);
                break;
            case Quiet:
                json.WriteBoolean("quiet", true);
                break;
            default:
                throw new ArgumentException($"no JSON form for {predicate}", nameof(predicate));
        }
    }

    private static void WriteNets(Utf8JsonWriter json, string name, params ReadOnlySpan<string> nets)
    {
        json.WriteStartArray(name);
        foreach (var net in nets)
            json.WriteStringValue(net);
        json.WriteEndArray();
    }

    private static void WriteBand(Utf8JsonWriter json, double low, double? high)
    {
        json.WriteStartArray("volts");
        json.WriteNumberValue(low);
        if (high is { } bound)
            json.WriteNumberValue(bound);
        else
            json.WriteNullValue();
        json.WriteEndArray();
    }

    private static string NameOf(Grade grade) =>
        grade switch
        {
            Grade.Solid => "solid",
            Grade.Load => "load",
            _ => "loose",
        };

    private static string NameOf(PhaseOrder order) =>
        order switch
        {
            PhaseOrder.Forward => "forward",
            PhaseOrder.Reverse => "reverse",
            _ => "any",
        };

    /// <summary>Also names the direction of a load mode.</summary>
    public static string NameOf(Turning turning) =>
        turning switch
        {
            Turning.Forward => "forward",
            Turning.Reverse => "reverse",
            _ => "any",
        };
}
