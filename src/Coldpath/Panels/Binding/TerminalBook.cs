namespace Coldpath.Panels.Binding;

/// <summary>
/// The terminals of every device: those its kind gives, those of its contacts that are used, and on a terminal strip
/// whichever are named.
/// </summary>
internal sealed class TerminalBook
{
    private readonly Dictionary<string, TerminalSet> terminals = new(StringComparer.Ordinal);

    public TerminalBook(Roster roster, ContactBook contacts, IEnumerable<DeviceReading> readings)
    {
        var named = readings
            .Where(r => Markings.IsStrip(r.Device.Blueprint!))
            .ToLookup(r => r.Tag, r => r.Syntax.Terminals?.Names ?? []);
        foreach (var device in roster.InOrder.Where(d => d.Blueprint is not null))
            terminals.Add(
                device.Tag,
                new TerminalSet([
                    .. Markings
                        .TerminalsOf(device.Blueprint!)
                        .Concat(contacts.TerminalsOf(device.Tag))
                        .Concat(named[device.Tag].SelectMany(n => n).Select(n => n.Text))
                        .Distinct(),
                ])
            );
    }

    /// <summary>In the kind's order, then contacts by number, then as they are first named.</summary>
    public TerminalSet Of(string tag) => terminals[tag];
}
