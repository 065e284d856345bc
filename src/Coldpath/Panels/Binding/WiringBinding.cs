using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>
/// Joins what wires and chains join. A chain that names a conductor which is not yet known to arrive anywhere waits
/// for the others, so the order of the lines does not matter.
/// </summary>
internal sealed class WiringBinding(
    RefReader reader,
    Roster roster,
    ContactBook contacts,
    TerminalBook terminals,
    BindingFindings findings
)
{
    /// <summary>
    /// A conductor's name may pass through this many chains each of which names one; then it is said not to arrive.
    /// </summary>
    private const int MostPasses = 16;

    private readonly Joints joints = new();
    private readonly List<(Pin Pin, Span Span)> bonded = [];
    private readonly List<Chain> chains = [];
    private readonly List<ConductorUse> uses = [];

    public Joined Bind(PanelSyntax panel, Nodes nodes)
    {
        foreach (var wire in panel.Statements.OfType<WireSyntax>())
            Join(wire);
        if (!findings.AreTooMany)
            WeaveAll([.. panel.Statements.OfType<ChainSyntax>()]);
        var conductors = Conductors(areAll: true);
        foreach (var use in uses)
            Confirm(use, conductors);
        var nets = new NetBook(roster, terminals, nodes, joints);
        chains.Sort((a, b) => a.Span.Start.CompareTo(b.Span.Start));
        return new Joined(conductors, nets, [.. bonded.Select(b => BondAt(b.Pin, b.Span, nets))], chains);
    }

    /// <summary>Until no chain learns of more conductors; what is still missing then will not come.</summary>
    private void WeaveAll(List<ChainSyntax> waiting)
    {
        var before = -1;
        for (var pass = 0; waiting.Count != before && pass < MostPasses; pass++)
        {
            before = waiting.Count;
            waiting = Weave(waiting, Conductors(areAll: false));
        }
        var hasMistakes = !findings.AreHarmless;
        var names = ConductorsAnywhere();
        foreach (var (_, done) in Woven(waiting, Conductors(areAll: true)))
            Take(hasMistakes ? WithoutMissed(done, names) : done);
    }

    /// <summary>Weaves every chain against the same conductors; those that have to wait are returned.</summary>
    private List<ChainSyntax> Weave(List<ChainSyntax> waiting, ConductorNames conductors)
    {
        var woven = Woven(waiting, conductors).ToLookup(w => w.Woven.Waits);
        foreach (var (_, done) in woven[false])
            Take(done);
        return [.. woven[true].Select(w => w.Syntax)];
    }

    private List<(ChainSyntax Syntax, Woven Woven)> Woven(
        List<ChainSyntax> chains,
        ConductorNames conductors
    ) => [.. chains.Select(c => (c, Weaver.Weave(c, reader, contacts, terminals, conductors)))];

    /// <summary>A conductor that a chain with a mistake would have brought is not missed.</summary>
    private static Woven WithoutMissed(Woven done, HashSet<string> names) =>
        done with
        {
            Findings =
            [
                .. done.Findings.Where(f =>
                    f.Code != Complaint.UnknownTerminal.Code || !names.Contains(f.Location.Text)
                ),
            ],
        };

    private void Take(Woven done)
    {
        chains.Add(done.Chain);
        uses.AddRange(done.Uses);
        findings.Add(done.Findings);
        foreach (var (a, b) in done.Joins)
            Join(a, b, done.Chain.Span);
    }

    private ConductorNames Conductors(bool areAll) => new(Known(), joints, areAll);

    /// <summary>What conductors are called anywhere in the panel.</summary>
    private HashSet<string> ConductorsAnywhere() =>
        [.. Known().SelectMany(d => ConductorNames.Sources(d.Blueprint)).Select(s => s.Name)];

    private IEnumerable<(string Tag, Blueprint Blueprint)> Known() =>
        roster.InOrder.Where(d => d.Blueprint is not null).Select(d => (d.Tag, d.Blueprint!));

    private void Join(WireSyntax wire)
    {
        var number = wire.Number.Text == Pin.Earth.Name ? Pin.Earth : new Pin(null, wire.Number.Text);
        foreach (var end in wire.Ends)
        foreach (var pin in PinsOf(end))
            Join(number, pin, end.Span);
    }

    private List<Pin> PinsOf(RefSyntax end)
    {
        switch (reader.Read(end))
        {
            case NodeReading node:
                return [node.Pin];
            case DeviceReading { Syntax.Terminals: { } names } device:
                var bracket = new Bracket(device, terminals, ConductorNames.None);
                var pins = names.Names.Select(bracket.Pin).OfType<Pin>().ToList();
                findings.Add(bracket.Findings);
                return pins;
            case DeviceReading device:
                var message = $"a wire joins terminals, and {device.Tag} does not say which";
                var remedy = $"write {device.Tag}:TERMINAL";
                findings.Add(Complaint.UnknownTerminal.At(end.Span, message, device.Tag, remedy));
                return [];
            default:
                return [];
        }
    }

    private void Join(Pin a, Pin b, Span span)
    {
        if (!a.IsEarth && !b.IsEarth)
            joints.Join(a, b);
        else if (a != b)
            bonded.Add((a.IsEarth ? b : a, span));
    }

    private static Bond BondAt(Pin pin, Span span, NetBook nets)
    {
        var net = nets.Of(pin);
        var device = pin.Device ?? (net.Terminals.Count > 0 ? net.Terminals[0].Device : "");
        return new Bond(net.Name, pin.ToString(), device, span);
    }

    /// <summary>A mark taken for a pole's conductor must not be another conductor's name elsewhere on that side.</summary>
    private void Confirm(ConductorUse use, ConductorNames conductors)
    {
        if (conductors.At(use.Chosen).Contains(use.Mark))
            return;
        var others = use.Others.Where(o => conductors.At(o).Contains(use.Mark)).ToList();
        if (others.Count == 0)
            return;
        var message =
            $"{use.Mark} is the marking of {use.Chosen}, but the conductor {use.Mark} arrives at {others[0]}";
        var remedy = $"name the terminal, {use.Chosen} or {others[0]}";
        findings.Add(Complaint.AmbiguousTerminal.At(use.Span, message, use.Chosen.Device, remedy));
    }
}
