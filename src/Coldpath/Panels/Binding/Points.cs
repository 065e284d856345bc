using Coldpath.Findings;
using Coldpath.Panels.Flattening;

namespace Coldpath.Panels.Binding;

/// <summary>Terminals and nodes that statements outside the wiring speak of, and their nets.</summary>
internal sealed class Points(Joined joined, TerminalBook terminals, Naming naming, BindingFindings findings)
{
    /// <summary>The pins that a reading with terminals, or a node, speaks of; null after a finding.</summary>
    public IReadOnlyList<Pin>? PinsOf(Reading reading)
    {
        if (reading is NodeReading node)
            return [node.Pin];
        if (reading is not DeviceReading { Syntax.Terminals: { } names } device)
            return null;
        var bracket = new Bracket(device, terminals, joined.Conductors);
        var pins = names.Names.Select(bracket.Pin).ToList();
        findings.Add(bracket.Findings);
        return pins.Contains(null) ? null : [.. pins.OfType<Pin>()];
    }

    /// <summary>The nets of those pins.</summary>
    public IReadOnlyList<string>? Of(Reading reading) =>
        PinsOf(reading) is { } pins ? [.. pins.Select(NetOf).Distinct()] : null;

    /// <summary>The nets of all terminals of a device.</summary>
    public IReadOnlyList<string> OfDevice(string tag) =>
        [.. terminals.Of(tag).Select(t => naming.NetOf(new Terminal(tag, t))).Distinct()];

    public string NetOf(Pin pin) =>
        pin.IsEarth ? Naming.Earth
        : pin.Device is null ? joined.Nets.Of(pin).Name
        : naming.NetOf(new Terminal(pin.Device, pin.Name));
}
