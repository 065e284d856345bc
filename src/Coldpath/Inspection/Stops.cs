using Coldpath.Circuit.Diagrams;
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

    /// <summary>States in which the control is operated: a stop away from rest, a selector at OFF.</summary>
    public static Diagram Operated(Evidence evidence, NetlistDevice control)
    {
        var variable = Position(evidence, control);
        if (variable is null)
            return Diagram.False;
        return control.Use == ControlUse.Mode
            ? evidence.Table.AnyOf(
                OffPositions(evidence, control).Select(value => evidence.Is(variable, value))
            )
            : !evidence.Is(variable, variable.Rest);
    }

    /// <summary>Every stop and emergency stop operated, every selector that has an OFF at OFF.</summary>
    public static Diagram AllOperated(Evidence evidence) =>
        evidence.Table.AllOf(
            Emergency(evidence).Concat(Ordinary(evidence)).Select(d => Operated(evidence, d))
        );

    private static IEnumerable<string> OffPositions(Evidence evidence, NetlistDevice control) =>
        Position(evidence, control)?.Values.Where(value => OffNames.Contains(value)) ?? [];

    private static Variable? Position(Evidence evidence, NetlistDevice control) =>
        evidence.Devices.Variables(control.Tag).FirstOrDefault(v => v.Kind == VariableKind.Position);
}
