using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A coil that current reaches by a way that nobody meant.</summary>
/// <param name="Armature">The coil's variable.</param>
/// <param name="Holds">It holds the armature in, else it pulls it in.</param>
/// <param name="States">Where it does or may.</param>
/// <param name="State">The one that the reading is of.</param>
/// <param name="Reading">The voltage across the coil.</param>
/// <param name="Path">The way of the current.</param>
public sealed record Sneak(
    Variable Armature,
    bool Holds,
    Diagram States,
    State State,
    CoilReading Reading,
    CurrentPath Path
)
{
    /// <summary>It is sure to, at any voltage that it may be.</summary>
    public required bool Sure { get; init; }
}

/// <summary>Coils that are reached only through loads or backwards through a transformer, and what the solver says of them.</summary>
public static class Sneaks
{
    /// <summary>So many conducting sets whose voltage nobody can say are passed over.</summary>
    private const int Most = 20;

    public static IEnumerable<Sneak> ThroughLoads(Evidence evidence)
    {
        foreach (var armature in Coils.Armatures(evidence))
            if ((Pull(evidence, armature) ?? Hold(evidence, armature)) is { } sneak)
                yield return sneak;
    }

    /// <summary>The way of the current through a coil in a state.</summary>
    public static CurrentPath PathOf(Evidence evidence, Variable armature, State state)
    {
        var coil = evidence.Netlist.Elements.First(e =>
            e.Device == armature.Device
            && e.Type == ElementType.Load
            && e.A == armature.Coil[0]
            && e.B == armature.Coil[1]
        );
        return CurrentPath.Through(evidence.Network, new Readings(evidence.Network, state), coil);
    }

    private static Sneak? Pull(Evidence evidence, Variable armature)
    {
        if (MoveOf(evidence, armature, "in") is not { } move)
            return null;
        var among = evidence.Table.And(Among(evidence, armature), evidence.Reachable);
        return Find(evidence, armature, move, evidence.Table.And(among, move.Solved), sure: true)
            ?? Find(evidence, armature, move, evidence.Table.And(among, move.Uncertain), sure: false);
    }

    /// <summary>Settled with the armature in, no solid way to the coil, and nothing that makes it drop.</summary>
    private static Sneak? Hold(Evidence evidence, Variable armature)
    {
        if (MoveOf(evidence, armature, "out") is not { } move)
            return null;
        var table = evidence.Table;
        var held = table.AllOf(
            Among(evidence, armature),
            evidence.Settled,
            evidence.Is(armature, "in"),
            !move.Certain,
            !move.Shorted
        );
        return Find(evidence, armature, move, table.Except(held, move.Uncertain), sure: true)
            ?? Find(evidence, armature, move, table.And(held, move.Uncertain), sure: false);
    }

    /// <summary>Every supply there, no fuse blown, no short, and no solid way to both sides of the coil.</summary>
    private static Diagram Among(Evidence evidence, Variable armature) =>
        evidence.Table.AllOf(
            evidence.Intact,
            !evidence.Behaviour.Shorted,
            !evidence.Of(new Energised(armature.Coil[0], armature.Coil[1], Grade.Solid, 0, null))
        );

    private static Transition? MoveOf(Evidence evidence, Variable armature, string to) =>
        evidence.Behaviour.Transitions.FirstOrDefault(t =>
            t.Cause == Cause.Settle
            && evidence.Netlist.Variables[t.Variable] == armature
            && armature.Values[t.To] == to
        );

    /// <summary>The nearest state of which the solver can say that the voltage is enough.</summary>
    private static Sneak? Find(
        Evidence evidence,
        Variable armature,
        Transition move,
        Diagram states,
        bool sure
    )
    {
        for (var tried = 0; tried < Most && evidence.Behaviour.ShortestTo(states) is { } story; tried++)
        {
            if (evidence.Behaviour.ReadCoil(move, story.End) is not { } reading)
                return null;
            if (reading.Volts.IsKnown && reading.Volts.High >= reading.Needed)
                return new(
                    armature,
                    armature.Values[move.To] == "out",
                    evidence.Table.And(states, reading.Condition),
                    story.End,
                    reading,
                    PathOf(evidence, armature, story.End)
                )
                {
                    Sure = sure,
                };
            states = evidence.Table.Except(states, reading.Condition);
        }
        return null;
    }
}
