using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Flattening;
using Coldpath.Panels.Sites;
using Coldpath.Wiring;

namespace Coldpath.Panels.Binding;

/// <summary>From syntax to the panel and its netlist, one step after another.</summary>
internal sealed class Binder
{
    private readonly PanelSyntax syntax;
    private readonly BindingFindings findings = new();
    private readonly Header header;
    private readonly DeviceBinding devices;
    private readonly Nodes nodes;
    private readonly RefReader reader;
    private readonly ContactBook contacts;
    private readonly TerminalBook terminals;
    private readonly Joined joined;
    private readonly Naming naming;
    private readonly Points points;

    public Binder(ParseResult parsed, IReadOnlyList<Finding> ofKinds, MakeDevice make, Neighbours neighbours)
    {
        syntax = parsed.Panel;
        findings.Add(parsed.Findings);
        findings.Add(ofKinds);
        header = Header.Bind(syntax, findings);
        nodes = Nodes.Of(syntax);
        devices = new DeviceBinding(syntax, header, make, findings);
        AddNeighbours(neighbours);
        ReportClashes();
        reader = new RefReader(devices.Roster, nodes, syntax.BrokenWords, findings);
        var readings = WiredDevices().ToList();
        contacts = new ContactBook(readings, findings);
        terminals = new TerminalBook(devices.Roster, contacts, readings.Select(r => r.Reading));
        var wiring = new WiringBinding(reader, devices.Roster, contacts, terminals, findings);
        joined = wiring.Bind(syntax, nodes);
        naming = new Naming(devices.Known, joined.Nets.InOrder);
        points = new Points(joined, terminals, naming, findings);
        ReportPassed();
    }

    public BoundResult Bind()
    {
        var panel = Panel();
        var netlist = findings.AreHarmless ? new Flattener(panel, naming).Flatten() : null;
        return new BoundResult(panel, netlist, findings.InOrder);
    }

    private IEnumerable<(DeviceReading Reading, Role Role)> WiredDevices()
    {
        foreach (var statement in syntax.Statements)
        foreach (var (reference, role) in References.In(statement))
            if (reader.Read(reference) is DeviceReading reading)
                yield return (reading, role);
    }

    private Panel Panel()
    {
        var untraced = Untraced();
        return new Panel
        {
            Name = header.Name,
            Drawing = header.Drawing,
            Revision = header.Revision,
            System = header.System,
            Devices = devices.Placed(Knowledge(), contacts, terminals),
            Nets = joined.Nets.InOrder,
            Bonds = joined.Bonds,
            Chains = joined.Chains,
            Intents = Intents(),
            Waivers = Waivers(),
            Untraced = untraced,
            Duplicates = devices.Roster.Duplicates,
            AllocatedContacts = contacts.Allocated,
        };
    }

    private IReadOnlyList<Intent> Intents()
    {
        var conditions = new ConditionBinding(reader, points, naming, findings);
        var binding = new IntentBinding(reader, points, conditions, naming, findings);
        return [.. syntax.Statements.OfType<IntentSyntax>().Select(binding.Bind).OfType<Intent>()];
    }

    private IReadOnlyList<Waiver> Waivers() =>
        [
            .. from waive in syntax.Statements.OfType<WaiveSyntax>()
            let spoken = waive.On.Select(Spoken).ToList()
            where !spoken.Contains(null)
            select new Waiver(waive.Check.Text, [.. spoken.OfType<string>()], waive.Because.Text, waive.Span),
        ];

    /// <summary>A tag, or a point as points are written.</summary>
    private string? Spoken(RefSyntax reference) =>
        reader.Read(reference) switch
        {
            DeviceReading { Syntax.Terminals: null, Words: "" } device => device.Tag,
            var reading => points.PinsOf(reading) is [var pin, ..] ? pin.ToString() : null,
        };

    private IReadOnlyList<UntracedPoint> Untraced() =>
        [
            .. from statement in syntax.Statements.OfType<UntracedSyntax>()
            from reference in statement.What
            from pin in points.PinsOf(reader.Read(reference)) ?? []
            select new UntracedPoint(
                pin.ToString(),
                points.NetOf(pin),
                DeviceAt(pin),
                statement.Because?.Text,
                reference.Span
            ),
        ];

    private string DeviceAt(Pin pin) =>
        pin.Device ?? (!pin.IsEarth && joined.Nets.Of(pin).Terminals is [var first, ..] ? first.Device : "");

    private Dictionary<string, Knowledge> Knowledge()
    {
        var known = new Dictionary<string, Knowledge>(StringComparer.Ordinal);
        foreach (var statement in syntax.Statements)
        {
            var (what, knowledge) = statement switch
            {
                SeenSyntax seen => (seen.What, Panels.Knowledge.Seen),
                FromDrawingSyntax drawn => (drawn.What, Panels.Knowledge.FromDrawing),
                _ => ([], Panels.Knowledge.Described),
            };
            foreach (var reading in what.Select(reader.Read).OfType<DeviceReading>())
                known[reading.Tag] = knowledge;
        }
        return known;
    }

    /// <summary>Devices of other panels that the lines of a site speak of.</summary>
    private void AddNeighbours(Neighbours neighbours)
    {
        if (neighbours.AreNone)
            return;
        foreach (var name in SpokenNames.In(syntax).Distinct())
            if (neighbours.Find(name) is { } device)
                devices.Roster.AddNeighbour(device);
    }

    private void ReportPassed()
    {
        foreach (var (reference, role) in syntax.Statements.SelectMany(References.In))
            if (
                role == Role.Passes
                && reader.Read(reference) is DeviceReading { Device.IsNeighbour: true } device
            )
                findings.Add(SiteFindings.Passed(reference, device.Tag));
    }

    private void ReportClashes()
    {
        foreach (var node in nodes.InOrder)
            if (devices.Roster.Find(node.Text) is { } device)
                findings.Add(
                    Complaint.NameClash.At(
                        node.Span,
                        $"{node} is already the tag of a device",
                        device.Tag
                    ) with
                    {
                        Related = [new Label(device.Span, "declared here")],
                    }
                );
        if (devices.Roster.Find(Pin.Earth.Name) is { } earth)
            findings.Add(
                Complaint.NameClash.At(earth.Span, "PE is the earth and cannot be a tag", earth.Tag)
            );
    }
}
