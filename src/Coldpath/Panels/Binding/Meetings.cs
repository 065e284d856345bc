using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>Finds the terminals that a name offers where it stands in its chain.</summary>
/// <param name="contacts">Contacts by the names that use them.</param>
/// <param name="terminals">The terminals of every device.</param>
/// <param name="conductors">Which conductors arrive where, as far as known.</param>
/// <param name="inRung">In a numbered rung, where the poles of a contactor have no business.</param>
internal sealed class Meetings(
    ContactBook contacts,
    TerminalBook terminals,
    ConductorNames conductors,
    bool inRung
)
{
    public List<ConductorUse> Uses { get; } = [];
    public List<Finding> Findings { get; } = [];

    /// <summary>Whether what was not found may yet be, once more conductors are known.</summary>
    public bool Waits { get; private set; }

    /// <summary>Null when the name offers nothing; a finding says why, unless it was reported before.</summary>
    public Meeting? Meet(Reading reading, Role role, Port? arriving) =>
        reading switch
        {
            NodeReading node => AtNode(node, role),
            DeviceReading device => AtDevice(device, role, arriving),
            _ => null,
        };

    private static Meeting AtNode(NodeReading node, Role role)
    {
        var port = new Port(node.Pin.Name, [node.Pin], [node.Pin.Name], node.Syntax.Span);
        var piece = new NodeStop(node.Pin.Name, node.Syntax.Span);
        return new(role == Role.Begins ? null : port, role == Role.Ends ? null : port, piece);
    }

    private Meeting? AtDevice(DeviceReading reading, Role role, Port? arriving)
    {
        if (contacts.IsRefused(reading))
            return null;
        if (contacts.UsedBy(reading) is { } contact)
            return AtContact(reading, role, arriving, contact);
        if (reading.Syntax.Terminals is null)
            return reading.Words.Length > 0
                ? AtPart(reading, role, arriving)
                : AtBareName(reading, role, arriving);
        return reading.Syntax.Terminals.InBrackets
            ? AtBracket(reading, role, arriving)
            : AtColon(reading, role, arriving);
    }

    /// <summary>Written the other way round, "14-13", it is wired the other way round.</summary>
    private Meeting AtContact(DeviceReading reading, Role role, Port? arriving, Contact contact)
    {
        var turned = reading.Syntax.Terminals?.Names[0].Text == $"{contact.Right}-{contact.Left}";
        return turned
            ? Offer(reading, role, [contact.Right], [contact.Left], arriving, contact)
            : Offer(reading, role, [contact.Left], [contact.Right], arriving, contact);
    }

    private Meeting? AtPart(DeviceReading reading, Role role, Port? arriving) =>
        reading.Device.Blueprint!.Parts.FirstOrDefault(p => p.Name == reading.Words) is { } part
            ? Offer(reading, role, part.Left, part.Right, arriving)
            : null;

    private Meeting? AtBareName(DeviceReading reading, Role role, Port? arriving)
    {
        var blueprint = reading.Device.Blueprint!;
        var poles = Markings.PolesOf(blueprint);
        var passable = poles.Count > 0 || Markings.IsBar(blueprint);
        if ((inRung || !passable) && blueprint.Parts.Any(p => p.Name == "coil"))
            return SayCoilOrContact(reading);
        if (role == Role.Passes && !passable)
            return CannotPass(reading);
        var byPoles = poles.Count > 0 && (role == Role.Passes || SideOf(blueprint, role).Count == 0);
        IReadOnlyList<string> line = byPoles ? [.. poles.Select(p => p.Left)] : blueprint.LineSide;
        IReadOnlyList<string> load = byPoles ? [.. poles.Select(p => p.Right)] : blueprint.LoadSide;
        return (role == Role.Begins ? load : line).Count == 0 || Markings.IsStrip(blueprint)
            ? HasNoSide(reading, role)
            : OfferAllOrWithoutNeutral(reading, role, line, load, arriving);
    }

    private static IReadOnlyList<string> SideOf(Blueprint blueprint, Role role) =>
        role == Role.Begins ? blueprint.LoadSide : blueprint.LineSide;

    /// <summary>Neutral and protective conductors take part only in a chain that has one.</summary>
    private Meeting? OfferAllOrWithoutNeutral(
        DeviceReading reading,
        Role role,
        IReadOnlyList<string> line,
        IReadOnlyList<string> load,
        Port? arriving
    )
    {
        var side = role == Role.Begins ? load : line;
        var withoutNeutral = Enumerable
            .Range(0, side.Count)
            .Where(i => !Markings.IsNeutralOrEarth(side[i]))
            .ToList();
        if (arriving is { HasNeutral: true } && side.Count > withoutNeutral.Count)
            return NeutralAgrees(reading, side, arriving) ? Offer(reading, role, line, load, arriving) : null;
        if (withoutNeutral.Count == 0)
            return Offer(reading, role, line, load, arriving);
        return Offer(
            reading,
            role,
            [.. withoutNeutral.Where(i => i < line.Count).Select(i => line[i])],
            [.. withoutNeutral.Where(i => i < load.Count).Select(i => load[i])],
            arriving
        );
    }

    private bool NeutralAgrees(DeviceReading reading, IReadOnlyList<string> side, Port arriving)
    {
        if (arriving.Width != side.Count)
            return true;
        for (var i = 0; i < side.Count; i++)
        {
            if (Markings.IsNeutralOrEarth(side[i]) == Markings.IsNeutralOrEarth(arriving.Conductors[i]))
                continue;
            var message = $"{arriving.Conductors[i]} would meet {reading.Tag}:{side[i]}";
            var remedy = $"write the terminals in order, such as {reading.Tag}[{string.Join(", ", side)}]";
            Findings.Add(Complaint.NeutralMisplaced.At(reading.Syntax.Span, message, reading.Tag, remedy));
            return false;
        }
        return true;
    }

    private Meeting? AtColon(DeviceReading reading, Role role, Port? arriving)
    {
        var name = reading.Syntax.Terminals!.Names[0];
        var bracket = new Bracket(reading, terminals, conductors);
        if (FixedPair(reading, name.Text) is { } pair)
            return IsOfAnotherPart(reading, pair)
                ? NotThatPart(reading, name)
                : Offer(reading, role, [pair.Left], [pair.Right], arriving);
        var pin = bracket.Pin(name);
        Findings.AddRange(bracket.Findings);
        return pin is { } found ? Touch(reading, role, [found], arriving) : null;
    }

    private static bool IsOfAnotherPart(DeviceReading reading, (string Left, string Right) pair)
    {
        if (reading.Words.Length == 0)
            return false;
        var poles = reading
            .Device.Blueprint!.Parts.Where(p => p.Name == reading.Words)
            .SelectMany(p => p.Left.Zip(p.Right));
        return !poles.Any(p => p == pair || p == (pair.Right, pair.Left));
    }

    private Meeting? NotThatPart(DeviceReading reading, WordSyntax name)
    {
        var message = $"{reading.Tag}:{name} is not {reading.Words} {reading.Tag}";
        Findings.Add(Complaint.ContactConflict.At(reading.Syntax.Span, message, reading.Tag));
        return null;
    }

    /// <summary>The two ends of a part or element named by its terminals, "95-96" or "1-2" for 1/L1 and 2/T1.</summary>
    private static (string Left, string Right)? FixedPair(DeviceReading reading, string name)
    {
        var blueprint = reading.Device.Blueprint!;
        var ends = blueprint
            .Parts.SelectMany(p => p.Left.Zip(p.Right))
            .Concat(blueprint.Network.Elements.Select(e => (e.A, e.B)))
            .Distinct()
            .ToList();
        foreach (var (left, right) in Markings.PairsIn(name))
        {
            foreach (var (a, b) in ends)
                if (Means(left, a) && Means(right, b))
                    return (a, b);
            foreach (var (a, b) in ends)
                if (Means(left, b) && Means(right, a))
                    return (b, a);
        }
        return null;
    }

    private static bool Means(string mark, string terminal) =>
        mark == terminal || Markings.IsMarkOf(mark, terminal);

    private Meeting? AtBracket(DeviceReading reading, Role role, Port? arriving)
    {
        var names = reading.Syntax.Terminals!.Names;
        var bracket = new Bracket(reading, terminals, conductors);
        var meeting = role switch
        {
            Role.Passes => bracket.Passed(names) is var (left, right)
                ? Offer(reading, role, left, right, arriving)
                : null,
            _ => bracket.Side(names, role == Role.Begins) is { } side
                ? Offer(reading, role, side, side, arriving)
                : null,
        };
        Uses.AddRange(bracket.Uses);
        Findings.AddRange(bracket.Findings);
        Waits |= bracket.Waits;
        return meeting;
    }

    private Meeting Touch(DeviceReading reading, Role role, IReadOnlyList<Pin> pins, Port? arriving)
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

    private Meeting Offer(
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

    private Meeting? SayCoilOrContact(DeviceReading reading)
    {
        var sorts = reading.Device.Blueprint!.Families.Select(f => f.Name).Where(n => n.Length > 0);
        var forms = sorts.Prepend("coil").Select(s => $"{s} {reading.Tag}");
        var message = $"{reading.Tag} has a coil and contacts: say which is meant";
        var remedy = $"write {string.Join(" or ", forms)}";
        Findings.Add(Complaint.CoilOrContact.At(reading.Syntax.Span, message, reading.Tag, remedy));
        return null;
    }

    private Meeting? CannotPass(DeviceReading reading)
    {
        var message = $"{reading.Tag} cannot be passed through by its bare name";
        var parts = RefReader.PartNames(reading.Device.Blueprint!).Take(4).ToList();
        var remedy =
            parts.Count > 0
                ? $"name the part, such as {parts[0]} {reading.Tag}"
                : $"end the chain at {reading.Tag} and begin another one there";
        Findings.Add(Complaint.NoSuchSide.At(reading.Syntax.Span, message, reading.Tag, remedy));
        return null;
    }

    private Meeting? HasNoSide(DeviceReading reading, Role role)
    {
        var side = role == Role.Begins ? "load side to begin at" : "line side to end at";
        var message = $"{reading.Tag} has no {side}";
        var remedy = "name its terminals in brackets";
        Findings.Add(Complaint.NoSuchSide.At(reading.Syntax.Span, message, reading.Tag, remedy));
        return null;
    }
}
