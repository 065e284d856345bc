namespace Coldpath.Panels.Binding;

/// <summary>The nets of a panel and their names.</summary>
internal sealed class NetBook
{
    private readonly Joints joints;
    private readonly Dictionary<int, PanelNet> byRoot;

    public NetBook(Roster roster, TerminalBook terminals, Nodes nodes, Joints joints)
    {
        this.joints = joints;
        var pins = roster
            .InOrder.Where(d => d.Blueprint is not null)
            .SelectMany(d => terminals.Of(d.Tag).InOrder.Select(t => new Pin(d.Tag, t)))
            .Concat(nodes.InOrder.Select(n => new Pin(null, n.Text)));
        // GroupBy keeps the order in which roots are first met.
        byRoot = pins.GroupBy(joints.RootOf).ToDictionary(g => g.Key, NetOf);
        InOrder = [.. byRoot.Values];
    }

    public IReadOnlyList<PanelNet> InOrder { get; }

    public PanelNet Of(Pin pin) => byRoot[joints.RootOf(pin)];

    private static PanelNet NetOf(IEnumerable<Pin> pins)
    {
        var names = pins.Where(p => p.Device is null).Select(p => p.Name).ToList();
        var terminals = pins.Where(p => p.Device is not null)
            .Select(p => new Terminal(p.Device!, p.Name))
            .ToList();
        return new PanelNet(names.Count > 0 ? names[0] : terminals[0].ToString(), names, terminals);
    }
}
