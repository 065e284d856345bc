namespace Coldpath.Panels.Binding;

/// <summary>Makes what a name offers of the terminals that it stands for.</summary>
/// <param name="conductors">Which conductors arrive where, as far as known.</param>
internal sealed class Offers(ConductorNames conductors)
{
    /// <summary>Terminals that are met and left at once.</summary>
    public Meeting Touch(DeviceReading reading, Role role, IReadOnlyList<Pin> pins, Port? arriving)
    {
        if (pins.All(p => !p.IsEarth))
            return Offer(
                reading,
                role,
                [.. pins.Select(p => p.Name)],
                [.. pins.Select(p => p.Name)],
                arriving
            );
        var port = new Port(reading.Name, pins, [.. pins.Select(p => p.Name)], reading.Syntax.Span);
        var piece = new NodeStop(Pin.Earth.Name, reading.Syntax.Span);
        return new(role == Role.Begins ? null : port, role == Role.Ends ? null : port, piece);
    }

    /// <summary>Terminals to the left and to the right; at an end of the chain one of them is not asked for.</summary>
    public Meeting Offer(
        DeviceReading reading,
        Role role,
        IReadOnlyList<string> left,
        IReadOnlyList<string> right,
        Port? arriving,
        Contact? contact = null
    )
    {
        var line = role == Role.Begins ? null : PortOf(reading, left);
        var load = role == Role.Ends ? null : PortOf(reading, right);
        if (line is not null && load is not null)
            load = load with { Conductors = Carried(reading, left, right, arriving, load) };
        var piece = new Passage(
            reading.Tag,
            reading.Words,
            contact,
            line is null ? [] : left,
            load is null ? [] : right,
            reading.Syntax.Span
        )
        {
            Poles = line is null || load is null ? [] : Passed(reading, left, right, contact),
        };
        return new(line, load, piece);
    }

    private static IReadOnlyList<(string Left, string Right)> Passed(
        DeviceReading reading,
        IReadOnlyList<string> left,
        IReadOnlyList<string> right,
        Contact? contact
    )
    {
        if (contact is not null)
            return [(contact.Left, contact.Right)];
        var poles = Markings.PolesOf(reading.Device.Blueprint!);
        return
        [
            .. left.Zip(
                right,
                (l, r) => poles.FirstOrDefault(p => p.Left == l || p.Right == l, Ordered(l, r))
            ),
        ];
    }

    private static (string Left, string Right) Ordered(string a, string b) =>
        string.CompareOrdinal(a, b) <= 0 ? (a, b) : (b, a);

    private Port PortOf(DeviceReading reading, IReadOnlyList<string> terminals) =>
        new(
            reading.Syntax.Span.Text,
            [.. terminals.Select(t => new Pin(reading.Tag, t))],
            [.. terminals.Select(t => ConductorAt(reading.Tag, t))],
            reading.Syntax.Span
        );

    /// <summary>A conductor counts as neutral by its terminal's own marking alone, never by what it is joined to.</summary>
    private string ConductorAt(string tag, string terminal)
    {
        var mark = Markings.ConductorAt(terminal);
        var arriving = conductors.At(new Pin(tag, terminal));
        var isKnown = arriving.Count == 1 && !Markings.IsNeutralOrEarth(arriving.First());
        return isKnown && !Markings.IsNeutralOrEarth(mark) ? arriving.First() : mark;
    }

    /// <summary>What the conductors are called that leave: as they were called on arriving, pole by pole.</summary>
    private static IReadOnlyList<string> Carried(
        DeviceReading reading,
        IReadOnlyList<string> left,
        IReadOnlyList<string> right,
        Port? arriving,
        Port leaving
    )
    {
        if (arriving is null || arriving.Width != left.Count || left.Count != right.Count)
            return leaving.Conductors;
        var enters = left.Select((t, i) => (t, i)).DistinctBy(p => p.t).ToDictionary(p => p.t, p => p.i);
        var poles = Markings
            .PolesOf(reading.Device.Blueprint!)
            .DistinctBy(p => p.Right)
            .ToDictionary(p => p.Right, p => p.Left);
        return
        [
            .. right.Select(
                (t, i) => arriving.Conductors[enters.GetValueOrDefault(poles.GetValueOrDefault(t, t), i)]
            ),
        ];
    }
}
