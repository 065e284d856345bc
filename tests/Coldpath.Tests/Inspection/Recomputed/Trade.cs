using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>What an inspector calls the parts of a netlist.</summary>
internal sealed class Trade(Netlist netlist)
{
    private static readonly string[] Off = ["OFF", "STOP", "0"];

    public Netlist Netlist => netlist;

    public IEnumerable<Supply> Supplies => EverySupply.Where(s => s.Store is null);

    public IEnumerable<Supply> EverySupply =>
        netlist.Supplies.Concat(netlist.Converters.Select(c => c.Output));

    public IEnumerable<string> StoreVariables => EverySupply.Select(s => s.Store?.Variable).OfType<string>();

    public IEnumerable<Load> Motors =>
        netlist.Loads.Where(l =>
            l.Modes.Count > 0 && netlist.Elements.Any(e => e.Power && l.Elements.Contains(e.Id))
        );

    public IEnumerable<Variable> Armatures =>
        netlist.Variables.Where(v => v.Kind == VariableKind.Armature && v.Coil.Count == 2);

    /// <summary>Variables that say whether a supply or a phase of it is there.</summary>
    public IEnumerable<Variable> Presences =>
        netlist.Variables.Where(v =>
            netlist.Supplies.Any(s =>
                s.Conductors.Select(c => c.Present)
                    .Prepend(s.Present)
                    .Any(g => Guards.Variables(g).Contains(v.Name))
            )
        );

    public object Supplied => Part.All(Presences.Select(Part.AtRest));

    public IEnumerable<Element> Poles(string tag) =>
        netlist.Elements.Where(e =>
            e.Device == tag && e.Power && e.Type is ElementType.Contact or ElementType.Semiconductor
        );

    /// <summary>Contactors and starters: poles that move by themselves and are no breaker's.</summary>
    public IEnumerable<string> Controllers =>
        from device in netlist.Devices
        where Poles(device.Tag).Any() && device.OpensOnShort.Count == 0
        where netlist.Variables.Any(v => v.Device == device.Tag && v.Moves.Any(m => m.By == Mover.Settle))
        select device.Tag;

    public bool HasSemiconductor(string tag) => Poles(tag).Any(e => e.Type == ElementType.Semiconductor);

    /// <summary>Every stop and emergency stop operated, every selector that has an OFF at OFF.</summary>
    public object StopsOperated =>
        Part.All(
            from device in netlist.Devices
            let position = netlist.Variables.FirstOrDefault(v =>
                v.Device == device.Tag && v.Kind == VariableKind.Position
            )
            let off = position?.Values.Where(Off.Contains).ToArray() ?? []
            where
                device.Emergency
                || device.Use == ControlUse.Stop
                || (device.Use == ControlUse.Mode && off.Length > 0)
            select device.Use == ControlUse.Mode
                ? Part.Any(off.Select(value => Part.Var(position!.Name, value)))
            : position is null ? false
            : Part.Not(Part.AtRest(position))
        );
}
