using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>The controls that are there to stop something, and when they count as operated.</summary>
public static class Stops
{
    /// <summary>Positions of a selector that stop: as written on the door.</summary>
    private static readonly string[] OffNames = ["OFF", "STOP", "0"];

    /// <summary>Emergency stops, in declared order.</summary>
    public static IEnumerable<NetlistDevice> Emergency(Evidence evidence) =>
        evidence.Netlist.Devices.Where(d => d.Emergency);

    /// <summary>Stop buttons and selectors with an OFF position, in declared order.</summary>
    public static IEnumerable<NetlistDevice> Ordinary(Evidence evidence) =>
        evidence.Netlist.Devices.Where(d =>
            (d.Use == ControlUse.Stop && !d.Emergency)
            || (d.Use == ControlUse.Mode && OffPositions(evidence, d).Any())
        );

    /// <summary>All of these.</summary>
    public static IEnumerable<NetlistDevice> All(Evidence evidence) =>
        Emergency(evidence).Concat(Ordinary(evidence));

    /// <summary>States in which the control is operated: a stop away from rest, a selector at OFF.</summary>
    public static Diagram Operated(Evidence evidence, NetlistDevice control) =>
        Operated(evidence, evidence.Behaviour, control);

    /// <summary>The same among the states of another behaviour of the panel.</summary>
    public static Diagram Operated(Evidence evidence, Behaviour behaviour, NetlistDevice control)
    {
        var variable = Position(evidence, control);
        if (variable is null)
            return Diagram.False;
        return control.Use == ControlUse.Mode
            ? behaviour.Table.AnyOf(OffPositions(evidence, control).Select(Is))
            : !Is(variable.Rest);

        Diagram Is(string value) => behaviour.Space.Is(variable.Name, value);
    }

    /// <summary>Every stop and emergency stop operated, every selector that has an OFF at OFF.</summary>
    public static Diagram AllOperated(Evidence evidence) => AllOperated(evidence, evidence.Behaviour);

    /// <summary>The same among the states of another behaviour of the panel.</summary>
    public static Diagram AllOperated(Evidence evidence, Behaviour behaviour) =>
        behaviour.Table.AllOf(All(evidence).Select(d => Operated(evidence, behaviour, d)));

    private static IEnumerable<string> OffPositions(Evidence evidence, NetlistDevice control) =>
        Position(evidence, control)?.Values.Where(value => OffNames.Contains(value)) ?? [];

    private static Variable? Position(Evidence evidence, NetlistDevice control) =>
        evidence.Devices.Variables(control.Tag).FirstOrDefault(v => v.Kind == VariableKind.Position);
}
