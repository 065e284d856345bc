using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>Turns moves into sentences: what somebody does, or sees happen.</summary>
public sealed class Narration(IReadOnlyList<Variable> variables)
{
    /// <summary>The steps of a story, in order, with the volts wherever a coil was put to the solver.</summary>
    public static IReadOnlyList<StoryStep> Tell(Story story)
    {
        var narration = new Narration(story.Variables);
        var before = story.Start;
        var told = new List<StoryStep>();
        foreach (var step in story.Steps)
        {
            told.Add(narration.Tell(step.Move, story.Behaviour.Read(step.Move, before)));
            before = step.After;
        }
        return told;
    }

    public IReadOnlyList<StoryStep> Tell(IEnumerable<Step> steps) =>
        [.. steps.Select(step => Tell(step.Move))];

    private StoryStep Tell(Transition move, CoilReading? reading)
    {
        var step = Tell(move);
        return reading is null
            ? step
            : step with
            {
                Text = $"{step.Text}: {VoltageWords.Of(reading, variables[move.Variable].Device)}",
            };
    }

    /// <summary>Every variable with its value, in declared order.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Values(State state) =>
        [.. variables.Select((v, i) => KeyValuePair.Create(v.Name, v.Values[state[i]]))];

    private StoryStep Tell(Transition move)
    {
        var variable = variables[move.Variable];
        var from = variable.Values[move.From];
        var to = variable.Values[move.To];
        return new(Sentence(variable, from, to, move.Cause), variable.Name, to, Mover(move.Cause));
    }

    private static string Sentence(Variable variable, string from, string to, Cause cause) =>
        cause switch
        {
            Cause.Operator => Operate(variable, from, to),
            Cause.Settle => Settle(variable, to),
            Cause.Short => $"{Subject(variable)} clears the short: {Part(variable)}{to}",
            Cause.Delay => $"{Subject(variable)} runs its time: {Part(variable)}{to}",
            Cause.Trip =>
                $"{Subject(variable)} {(to == "tripped" ? "trips" : $"resets itself: {Part(variable)}{to}")}",
            Cause.Process => Happen(variable, to),
            Cause.Condition => $"{Subject(variable)}: {Part(variable)}{to}",
            _ => $"failure: {FailureWords.Of(variable)}",
        };

    /// <summary>The hand's verb for the value, in the trade's words; "turn" for positions of a switch.</summary>
    private static string Operate(Variable variable, string from, string to)
    {
        var device = Subject(variable);
        return to switch
        {
            "closed" => $"close {device}",
            "open" => from == "tripped" ? $"reset {device} to open" : $"open {device}",
            "pressing" or "pressed" => $"press {device}",
            "releasing" or "released" => $"release {device}",
            "tripped" => $"press TEST on {device}",
            "reset" => $"reset {device}",
            "whole" => $"replace the {Part(variable)}link of {device}",
            _ => to.Contains('>', StringComparison.Ordinal)
                ? $"turn {device} from {to.Replace(">", " to ", StringComparison.Ordinal)}"
                : $"turn {device} to {to}",
        };
    }

    private static string Settle(Variable variable, string to) =>
        variable switch
        {
            { Kind: VariableKind.Armature } => $"{Subject(variable)} {Moves(to)}{Qualified(variable)}",
            { Kind: VariableKind.Position } => $"{Subject(variable)} comes to {to}",
            { Kind: VariableKind.Cell } => Tells(variable, to),
            _ => $"{Subject(variable)}: {Part(variable)}{to}",
        };

    private static string Moves(string to) => to == "in" ? "pulls in" : "drops out";

    /// <summary>"K5 pulls in", "U1: ramp", "K5: reopened", "K5: no longer reopened", "K5: button held".</summary>
    private static string Tells(Variable cell, string to) =>
        (Part(cell).Trim(), to) switch
        {
            ("", "in" or "out") => $"{Subject(cell)} {Moves(to)}",
            ({ Length: > 0 } flag, "yes") => $"{Subject(cell)}: {flag}",
            ({ Length: > 0 } flag, "no") => $"{Subject(cell)}: no longer {flag}",
            _ => $"{Subject(cell)}: {Part(cell)}{to}",
        };

    private static string Happen(Variable variable, string to) =>
        to switch
        {
            "absent" => $"{Subject(variable)} fails{Qualified(variable)}",
            "present" => $"{Subject(variable)} comes back{Qualified(variable)}",
            "in" => $"{Subject(variable)} acts",
            "out" => $"{Subject(variable)} goes back",
            _ => $"{Subject(variable)}: {Part(variable)}{to}",
        };

    private static string Subject(Variable variable) =>
        variable.Device.Length > 0 ? variable.Device : variable.Name;

    /// <summary>"gate " for U1.gate; nothing for the device's own variable.</summary>
    private static string Part(Variable variable) =>
        variable.Name.StartsWith(variable.Device + ".", StringComparison.Ordinal)
            ? variable.Name[(variable.Device.Length + 1)..] + " "
            : "";

    private static string Qualified(Variable variable) =>
        Part(variable) is { Length: > 0 } part ? $" ({part.Trim()})" : "";

    private static string Mover(Cause cause) => cause.ToString().ToLowerInvariant();
}
