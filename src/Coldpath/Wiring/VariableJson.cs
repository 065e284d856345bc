using System.Text.Json;

namespace Coldpath.Wiring;

internal static class VariableJson
{
    public static void Members(Utf8JsonWriter json, Variable variable)
    {
        json.WriteString("name", variable.Name);
        json.WriteString("device", variable.Device);
        json.WriteString("kind", NameOf(variable.Kind));
        if (variable.Class is { } failure)
            json.WriteString("class", NameOf(failure));
        json.WriteStrings("values", variable.Values);
        json.WriteString("rest", variable.Rest);
        json.WriteBoolean("momentary", variable.Momentary);
        json.WriteBoolean("standby", variable.Standby);
        if (variable.Coil.Count > 0)
            json.WriteStrings("coil", variable.Coil);
        json.WriteObjects("moves", variable.Moves, MoveMembers);
    }

    /// <summary>"VARIABLE=VALUE".</summary>
    public static string TextOf(Operation operation) => $"{operation.Variable}={operation.Value}";

    private static void MoveMembers(Utf8JsonWriter json, Move move)
    {
        json.WriteString("from", move.From);
        json.WriteString("to", move.To);
        json.WriteString("by", NameOf(move.By));
        json.WriteExpression("when", move.When);
        json.WriteExpression("may", move.May);
    }

    private static string NameOf(VariableKind kind) =>
        kind switch
        {
            VariableKind.Position => "position",
            VariableKind.Process => "process",
            VariableKind.Armature => "armature",
            VariableKind.Cell => "cell",
            VariableKind.Timer => "timer",
            VariableKind.Trip => "trip",
            VariableKind.Condition => "condition",
            VariableKind.Failure => "failure",
            _ => "supply",
        };

    private static string NameOf(FailureClass failure) =>
        failure switch
        {
            FailureClass.Contact => "contact",
            FailureClass.Semiconductor => "semiconductor",
            FailureClass.Coil => "coil",
            FailureClass.Wiring => "wiring",
            _ => "control",
        };

    private static string NameOf(Mover mover) =>
        mover switch
        {
            Mover.Operator => "operator",
            Mover.Process => "process",
            Mover.Settle => "settle",
            Mover.Delay => "delay",
            Mover.Trip => "trip",
            Mover.Condition => "condition",
            _ => "failure",
        };
}
