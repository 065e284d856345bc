using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A voltage that a coil can see and is not made for.</summary>
public sealed record WrongVoltage(Variable Armature, double Low, double High, double Volts, Diagram States);

/// <summary>Facts about armatures and their coils.</summary>
public static class Coils
{
    public static IEnumerable<Variable> Armatures(Evidence evidence) =>
        evidence.Netlist.Variables.Where(v => v.Kind == VariableKind.Armature && v.Coil.Count == 2);

    /// <summary>
    /// States with the armature in, when no state that follows from them has it out as long as the supplies stay
    /// and nobody opens an isolator or a breaker; false when it can drop. A coil that is never out with the panel powered
    /// is meant to stand in, and left out.
    /// </summary>
    public static Diagram NeverDrops(Evidence evidence, Variable armature)
    {
        var powered = evidence.PoweredStates;
        var start = evidence.Table.And(powered, evidence.Is(armature, "in"));
        if (start.IsFalse || !evidence.Table.Meet(powered, evidence.Is(armature, "out")))
            return Diagram.False;
        var after = evidence
            .Behaviour.ReachFrom(start, uncertainToo: true, move => !CutsPower(evidence, move))
            .All;
        return evidence.Table.Meet(after, evidence.Is(armature, "out")) ? Diagram.False : start;
    }

    /// <summary>Voltages outside the band in which the coil is sure to pull in that reach it all the same.</summary>
    public static IEnumerable<WrongVoltage> WrongVoltages(Evidence evidence, Variable armature)
    {
        if (Band(armature) is not { } band)
            yield break;
        foreach (var volts in VoltagesAround(evidence).Where(v => v < band.Low || v > band.High))
        {
            var fed = new Energised(armature.Coil[0], armature.Coil[1], Grade.Solid, volts, volts);
            var states = evidence.Table.And(evidence.Settled, evidence.Of(fed));
            if (!states.IsFalse)
                yield return new(armature, band.Low, band.High!.Value, volts, states);
        }
    }

    /// <summary>The description gives the coil's voltage.</summary>
    public static bool IsRated(Variable armature) => Band(armature) is not null;

    /// <summary>The band of its pull-in condition; null when the description gives no coil voltage.</summary>
    private static Energised? Band(Variable armature) =>
        armature
            .Moves.Where(m => m.To == "in" && m.By == Mover.Settle)
            .Select(m => m.When)
            .OfType<Energised>()
            .FirstOrDefault(e => e.High is not null);

    /// <summary>Every voltage between two conductors of one supply, each once.</summary>
    private static IEnumerable<double> VoltagesAround(Evidence evidence) =>
        (
            from supply in evidence.Supplies
            from a in supply.Conductors.Index()
            from b in supply.Conductors.Skip(a.Index + 1)
            let volts = Phasors.Between(a.Item, b)
            where volts > 0
            select volts
        )
            .Distinct()
            .Order();

    private static bool CutsPower(Evidence evidence, Transition move)
    {
        var variable = evidence.Netlist.Variables[move.Variable];
        var device = evidence.Devices.Known(variable.Device) ? evidence.Devices[variable.Device] : null;
        return evidence.IsPresence(variable)
            || device?.Isolates?.Variable == variable.Name
            || move.Cause == Cause.Short
            || (device?.OpensOnShort.Count > 0 && move.Cause == Cause.Operator);
    }
}
