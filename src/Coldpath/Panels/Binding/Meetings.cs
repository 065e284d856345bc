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
    private readonly Offers offers = new(conductors);

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
            ? offers.Offer(reading, role, [contact.Right], [contact.Left], arriving, contact)
            : offers.Offer(reading, role, [contact.Left], [contact.Right], arriving, contact);
    }

    private Meeting? AtPart(DeviceReading reading, Role role, Port? arriving) =>
        reading.Device.Blueprint!.Parts.FirstOrDefault(p => p.Name == reading.Words) is { } part
            ? offers.Offer(reading, role, part.Left, part.Right, arriving)
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
            return NeutralAgrees(reading, side, arriving)
                ? offers.Offer(reading, role, line, load, arriving)
                : null;
        if (withoutNeutral.Count == 0)
            return offers.Offer(reading, role, line, load, arriving);
        return offers.Offer(
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
        if (FixedPairs.Named(reading, name.Text) is { } pair)
            return FixedPairs.IsOfAnotherPart(reading, pair)
                ? NotThatPart(reading, name)
                : offers.Offer(reading, role, [pair.Left], [pair.Right], arriving);
        var pin = bracket.Pin(name);
        Findings.AddRange(bracket.Findings);
        Waits |= bracket.Waits;
        return pin is { } found ? offers.Touch(reading, role, [found], arriving) : null;
    }

    private Meeting? NotThatPart(DeviceReading reading, WordSyntax name)
    {
        var message = $"{reading.Tag}:{name} is not {reading.Words} {reading.Tag}";
        Findings.Add(Complaint.ContactConflict.At(reading.Syntax.Span, message, reading.Tag));
        return null;
    }

    private Meeting? AtBracket(DeviceReading reading, Role role, Port? arriving)
    {
        var names = reading.Syntax.Terminals!.Names;
        var bracket = new Bracket(reading, terminals, conductors);
        var meeting = role switch
        {
            Role.Passes => bracket.Passed(names) is var (left, right)
                ? offers.Offer(reading, role, left, right, arriving)
                : null,
            _ => bracket.Side(names, role == Role.Begins) is { } side
                ? offers.Offer(reading, role, side, side, arriving)
                : null,
        };
        Uses.AddRange(bracket.Uses);
        Findings.AddRange(bracket.Findings);
        Waits |= bracket.Waits;
        return meeting;
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
