using Coldpath.Findings;
using Coldpath.Panels.Flattening;
using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>Terminals and nodes that statements outside the wiring speak of, and their nets.</summary>
internal sealed class Points(Joined joined, TerminalBook terminals, Naming naming, BindingFindings findings)
{
    private readonly Dictionary<string, IReadOnlyList<string>> ofDevices = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> live = new(StringComparer.Ordinal);

    /// <summary>The pins that a reading with terminals, a part or a node speaks of; null after a finding.</summary>
    public IReadOnlyList<Pin>? PinsOf(Reading reading)
    {
        if (reading is NodeReading node)
            return [node.Pin];
        if (reading is not DeviceReading device)
            return null;
        if (device.Syntax.Terminals is not { } names)
            return PinsOfPart(device);
        var bracket = new Bracket(device, terminals, joined.Conductors);
        var pins = names.Names.Select(bracket.Pin).ToList();
        findings.Add(bracket.Findings);
        return pins.Contains(null) ? null : [.. pins.OfType<Pin>()];
    }

    private IReadOnlyList<Pin>? PinsOfPart(DeviceReading device)
    {
        var part = device.Device.Blueprint!.Parts.FirstOrDefault(p => p.Name == device.Words);
        if (device.Words.Length > 0 && part is not null)
            return [.. part.Left.Concat(part.Right).Select(t => new Pin(device.Tag, t))];
        var message = $"{device.Name} does not say which terminal is meant";
        findings.Add(
            Complaint.UnknownTerminal.At(
                device.Syntax.Span,
                message,
                device.Tag,
                $"write {device.Tag}:TERMINAL"
            )
        );
        return null;
    }

    /// <summary>The nets of those pins.</summary>
    public IReadOnlyList<string>? Of(Reading reading) =>
        PinsOf(reading) is { } pins ? [.. pins.Select(NetOf).Distinct()] : null;

    /// <summary>The nets of all terminals of a device.</summary>
    public IReadOnlyList<string> OfDevice(string tag)
    {
        if (!ofDevices.TryGetValue(tag, out var nets))
            ofDevices.Add(
                tag,
                nets = [.. terminals.Of(tag).InOrder.Select(t => naming.NetOf(new(tag, t))).Distinct()]
            );
        return nets;
    }

    /// <summary>Some terminal of the device is live.</summary>
    public Expression AnyLive(string tag)
    {
        if (!live.TryGetValue(tag, out var any))
            live.Add(tag, any = Expression.AnyOf(OfDevice(tag).Select(n => new Live(n))));
        return any;
    }

    public string NetOf(Pin pin) =>
        pin.IsEarth ? Naming.Earth
        : pin.Device is null ? joined.Nets.Of(pin).Name
        : naming.NetOf(new Terminal(pin.Device, pin.Name));
}
