using System.Text;
using System.Text.Json;

namespace Coldpath.Wiring;

/// <summary>
/// The exported netlist, version 1: from it and the definitions alone an outsider can recompute every answer. Its
/// schema is netlist.schema.json beside this file.
/// </summary>
public static class NetlistJson
{
    public const int Schema = 1;

    public static string ToText(Netlist netlist, bool indented = false)
    {
        using var buffer = new MemoryStream();
        using (
            var json = new Utf8JsonWriter(
                buffer,
                new JsonWriterOptions { Indented = indented, NewLine = "\n" }
            )
        )
            Write(json, netlist);
        return Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length);
    }

    public static void Write(Utf8JsonWriter json, Netlist netlist)
    {
        json.WriteStartObject();
        json.WriteNumber("schema", Schema);
        json.WriteString("panel", netlist.Panel);
        json.WriteString("rules", netlist.Rules);
        json.WriteNumber("frequency", netlist.Frequency);
        json.WriteString("earth", netlist.Earth);
        json.WriteStrings("nets", netlist.Nets);
        json.WriteObjects("supplies", netlist.Supplies, SupplyMembers);
        json.WriteObjects("converters", netlist.Converters, ConverterMembers);
        json.WriteObjects("couplings", netlist.Couplings, CouplingMembers);
        json.WriteObjects("variables", netlist.Variables, VariableJson.Members);
        json.WriteStrings("powered", netlist.Powered.Select(VariableJson.TextOf));
        json.WriteObjects("elements", netlist.Elements, ElementMembers);
        json.WriteObjects("devices", netlist.Devices, DeviceJson.Members);
        json.WriteObjects("loads", netlist.Loads, LoadJson.Members);
        json.WriteObjects("constraints", netlist.Constraints, ConstraintMembers);
        json.WriteObjects("pairs", netlist.Pairs, PairMembers);
        WritePoints(json, netlist.Points);
        json.WriteObjects("intents", netlist.Intents, IntentJson.Members);
        json.WriteStrings("assumed", netlist.Assumed);
        json.WriteEndObject();
    }

    private static void PairMembers(Utf8JsonWriter json, DevicePair pair)
    {
        json.WriteString("kind", pair.Kind);
        json.WriteStrings("devices", pair.Devices);
    }

    private static void SupplyMembers(Utf8JsonWriter json, Supply supply)
    {
        json.WriteString("name", supply.Name);
        json.WriteString("kind", supply.Direct ? "dc" : "ac");
        json.WriteExpression("present", supply.Present);
        json.WriteString("group", supply.Group);
        json.WriteBoolean("elv", supply.ExtraLow);
        json.WriteBoolean("limited", supply.Limited);
        WriteStore(json, supply.Store);
        json.WriteOhms(supply.Ohms);
        json.WriteObjects("conductors", supply.Conductors, ConductorMembers);
    }

    private static void WriteStore(Utf8JsonWriter json, Store? store)
    {
        if (store is null)
        {
            json.WriteNull("store");
            return;
        }
        json.WriteStartObject("store");
        json.WriteString("variable", store.Variable);
        json.WriteString("discharge", store.Discharge);
        json.WriteEndObject();
    }

    private static void ConductorMembers(Utf8JsonWriter json, SupplyConductor conductor)
    {
        json.WriteString("name", conductor.Name);
        json.WriteString("net", conductor.Net);
        json.WriteNumber("volts", conductor.Volts);
        json.WriteNumber("degrees", conductor.Degrees);
        json.WriteString("polarity", NameOf(conductor.Polarity));
        json.WriteExpression("present", conductor.Present);
    }

    private static void ConverterMembers(Utf8JsonWriter json, Converter converter)
    {
        json.WriteString("name", converter.Name);
        json.WriteString("type", NameOf(converter.Type));
        json.WriteStrings("inputs", converter.Inputs);
        WriteWindings(json, converter.Windings);
        json.WriteExpression("when", converter.When);
        json.WriteNumber("ratio", converter.Ratio);
        json.WriteOhms(converter.Ohms);
        json.WriteObject("output", converter.Output, SupplyMembers);
    }

    private static void CouplingMembers(Utf8JsonWriter json, Coupling coupling)
    {
        json.WriteString("name", coupling.Name);
        WriteWindings(json, coupling.Windings);
        json.WriteString("from", coupling.FirstDrives ? "first" : "any");
    }

    private static void WriteWindings(Utf8JsonWriter json, IEnumerable<IEnumerable<string>> windings)
    {
        json.WriteStartArray("windings");
        foreach (var winding in windings)
        {
            json.WriteStartArray();
            foreach (var net in winding)
                json.WriteStringValue(net);
            json.WriteEndArray();
        }
        json.WriteEndArray();
    }

    private static void ElementMembers(Utf8JsonWriter json, Element element)
    {
        json.WriteString("id", element.Id);
        json.WriteString("device", element.Device);
        json.WriteNumber("pole", element.Pole);
        json.WriteBoolean("power", element.Power);
        json.WriteString("a", element.A);
        json.WriteString("b", element.B);
        json.WriteString("type", NameOf(element.Type));
        json.WriteExpression("closed", element.Closed);
        if (element.Leaks is { } leaks)
            json.WriteExpression("leaks", leaks);
        json.WriteOhms(element.Ohms);
        if (element.Burdens.Count > 0)
            json.WriteObjects("burdens", element.Burdens, BurdenMembers);
        json.WriteOptional("size", element.Size);
        if (element.Metres is { } metres)
            json.WriteNumber("metres", metres);
    }

    private static void BurdenMembers(Utf8JsonWriter json, Burden burden)
    {
        json.WriteExpression("when", burden.When);
        if (burden.Volts is { } volts)
            json.WriteNumber("volts", volts);
        json.WriteBoolean("dc", burden.Direct);
        json.WriteRange("va", burden.Least, burden.Most);
        json.WriteRange("factor", burden.LeastFactor, burden.MostFactor);
    }

    private static void ConstraintMembers(Utf8JsonWriter json, Constraint constraint)
    {
        json.WriteString("name", constraint.Name);
        json.WriteString("kind", constraint.Kind);
        json.WriteExpression("holds", constraint.Holds);
    }

    private static void WritePoints(Utf8JsonWriter json, IEnumerable<Point> points)
    {
        json.WriteStartObject("points");
        foreach (var point in points)
        {
            json.WriteStartObject(point.Name);
            json.WriteString("net", point.Net);
            json.WriteOptional("device", point.Device);
            json.WriteOptional("place", point.Place);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static string NameOf(Polarity polarity) =>
        polarity switch
        {
            Polarity.Plus => "plus",
            Polarity.Minus => "minus",
            _ => "ac",
        };

    private static string NameOf(ConverterType type) =>
        type switch
        {
            ConverterType.Transformer => "transformer",
            ConverterType.Rectifier => "rectifier",
            ConverterType.Drive => "drive",
            _ => "ups",
        };

    private static string NameOf(ElementType type) =>
        type switch
        {
            ElementType.Conductor => "conductor",
            ElementType.Contact => "contact",
            ElementType.Semiconductor => "semiconductor",
            ElementType.Thermal => "thermal",
            ElementType.Series => "series",
            ElementType.Load => "load",
            ElementType.Diode => "diode",
            _ => "fault",
        };
}
