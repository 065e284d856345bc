using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>One element that current passes.</summary>
/// <param name="Name">Its id; a transformer's name where current goes on from winding to winding.</param>
/// <param name="From">The net where current enters.</param>
/// <param name="To">The net where it leaves.</param>
/// <param name="Amperes">Through this element.</param>
/// <param name="Volts">Across it; null when nothing fixes it.</param>
public sealed record CurrentStep(string Name, string From, string To, double Amperes, double? Volts);

/// <summary>The way of the greatest current through an element, from one conductor of a supply to another.</summary>
/// <param name="From">"G1 L+"; null when the way is lost.</param>
/// <param name="Steps">In the direction of the current.</param>
/// <param name="To">The conductor at its end; null when the way is lost.</param>
public sealed record CurrentPath(string? From, IReadOnlyList<CurrentStep> Steps, string? To)
{
    /// <summary>The way that the readings show; its steps are in the direction of a half wave for alternating voltage.</summary>
    public static CurrentPath Through(Network network, Readings readings, Element element)
    {
        var flows = new Flows(network, readings, element.Id);
        var before = flows.Follow(element.A, element.Id, back: true);
        var after = flows.Follow(element.B, element.Id, back: false);
        var middle = flows.Step(element.Id, element.A, element.B);
        CurrentStep[] steps = [.. before.Steps.Reverse(), middle, .. after.Steps];
        return IsAgainst(before.End, after.End)
            ? new(NameOf(after.End), [.. steps.Reverse().Select(Turned)], NameOf(before.End))
            : new(NameOf(before.End), steps, NameOf(after.End));
    }

    /// <summary>From plus to minus, or from the conductor of the higher voltage.</summary>
    private static bool IsAgainst(Source? from, Source? to)
    {
        if (from is null || to is null)
            return false;
        return from.Supply.Direct
            ? from.Volts.Real < to.Volts.Real
            : from.Volts.Magnitude < to.Volts.Magnitude - 1e-6;
    }

    private static CurrentStep Turned(CurrentStep step) => step with { From = step.To, To = step.From };

    private static string? NameOf(Source? source) =>
        source is null ? null : $"{source.Supply.Name} {source.Conductor.Name}";
}
