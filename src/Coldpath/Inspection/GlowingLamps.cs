using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.States;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A lamp that current through other loads lights.</summary>
/// <param name="Lamp">Its load element.</param>
/// <param name="States">Where it does.</param>
/// <param name="State">One of them.</param>
/// <param name="Reading">The voltage across it.</param>
/// <param name="Path">The way of the current.</param>
public sealed record GlowingLamp(
    Element Lamp,
    Diagram States,
    State State,
    CoilReading Reading,
    CurrentPath Path
);

/// <summary>
/// Lamps with no solid way to both sides that get half their voltage all the same. A load in the lamp's own rung is meant to be there:
/// a lamp that watches a coil.
/// </summary>
public static class GlowingLamps
{
    /// <summary>So much of its voltage is taken for light; common practice.</summary>
    private const double Lit = 0.5;

    /// <summary>So many conducting sets that do not light it are passed over.</summary>
    private const int Most = 8;

    public static IEnumerable<GlowingLamp> Of(Evidence evidence)
    {
        foreach (var load in evidence.Netlist.Loads.Where(l => l.Elements.Count == 1 && l.Modes.Count > 0))
            if (
                evidence.Devices.Element(load.Elements[0]) is { Burdens: [{ Volts: { } rated }, ..] } lamp
                && Find(evidence, lamp, rated) is { } glowing
                && !IsMeant(evidence.Panel, lamp.Device, glowing.Path, evidence)
            )
                yield return glowing;
    }

    private static GlowingLamp? Find(Evidence evidence, Element lamp, double rated)
    {
        var table = evidence.Table;
        var states = table.AllOf(
            evidence.Settled,
            evidence.Intact,
            !evidence.Behaviour.Shorted,
            evidence.Of(new Energised(lamp.A, lamp.B, Grade.Loose, 0, null)),
            !evidence.Of(new Energised(lamp.A, lamp.B, Grade.Solid, 0, null))
        );
        for (var tried = 0; tried < Most && evidence.Behaviour.ShortestTo(states) is { } story; tried++)
        {
            var reading = evidence.Behaviour.ReadAcross(lamp.A, lamp.B, rated, Lit * rated, story.End);
            if (reading.Volts.IsKnown && reading.Volts.Low >= reading.Needed)
                return new(
                    lamp,
                    table.And(states, reading.Condition),
                    story.End,
                    reading,
                    CurrentPath.Through(evidence.Network, new(evidence.Network, story.End), lamp)
                );
            states = table.Except(states, reading.Condition);
        }
        return null;
    }

    /// <summary>One rung holds the lamp and every other load that its current passes.</summary>
    private static bool IsMeant(Panel panel, string lamp, CurrentPath path, Evidence evidence)
    {
        var loads = path
            .Steps.Select(s => evidence.Devices.TryElement(s.Name))
            .Where(e => e is { Type: ElementType.Load } && e.Device != lamp)
            .Select(e => e!.Device)
            .ToArray();
        return panel
            .Chains.Select(c => c.Passages.Select(p => p.Device).ToHashSet())
            .Any(rung => rung.Contains(lamp) && loads.All(rung.Contains));
    }
}
