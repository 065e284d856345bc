using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Which ports are wired together. A bar that stands above and below has two ports of one net: what arrives and what
/// leaves are then two joints.
/// </summary>
internal sealed class Joints
{
    private readonly Dictionary<Terminal, List<Port>> portsOf = [];
    private readonly Dictionary<string, int> nodes = new(StringComparer.Ordinal);
    private readonly List<int> parent = [];

    private Joints(IReadOnlyList<Block> blocks)
    {
        foreach (var port in blocks.SelectMany(b => b.Ports).OrderBy(p => p.Index))
        {
            parent.Add(parent.Count);
            foreach (var terminal in port.Terminals)
                (portsOf.TryGetValue(terminal, out var list) ? list : portsOf[terminal] = []).Add(port);
        }
    }

    /// <summary>Ports by joint, in the order of their first ports; a port that is wired to nothing is alone in one.</summary>
    public static IReadOnlyList<IReadOnlyList<Port>> Of(
        Panel panel,
        Division division,
        IReadOnlyList<Block> blocks
    )
    {
        var joints = new Joints(blocks);
        foreach (var chain in division.Power)
            joints.Walk(chain.Root);
        foreach (var net in panel.Nets)
            joints.JoinRest(net);
        return
        [
            .. blocks
                .SelectMany(b => b.Ports)
                .OrderBy(p => p.Index)
                .GroupBy(p => joints.Root(p.Index))
                .Select(g => (IReadOnlyList<Port>)[.. g]),
        ];
    }

    /// <summary>What a chain's pieces offer to their neighbours: for each conductor the things that meet there.</summary>
    private (IReadOnlyList<IReadOnlyList<int>> Entry, IReadOnlyList<IReadOnlyList<int>> Exit) Walk(
        ChainPiece piece
    )
    {
        switch (piece)
        {
            case Passage passage:
                return (Ends(passage.Device, passage.Left, true), Ends(passage.Device, passage.Right, false));
            case NodeStop node:
                return (
                    [
                        [NodeOf(node.Name)],
                    ],
                    [
                        [NodeOf(node.Name)],
                    ]
                );
            case InSeries series:
                var walked = series.Pieces.Select(Walk).ToList();
                foreach (var (before, after) in walked.Zip(walked.Skip(1)))
                    JoinAll(before.Exit, after.Entry);
                return (walked[0].Entry, walked[^1].Exit);
            case InParallel parallel:
                var branches = parallel.Branches.Select(Walk).ToList();
                return (SideBySide(branches.Select(b => b.Entry)), SideBySide(branches.Select(b => b.Exit)));
            default:
                return ([], []);
        }
    }

    private IReadOnlyList<IReadOnlyList<int>> Ends(
        string device,
        IReadOnlyList<string> terminals,
        bool entering
    ) =>
        [
            .. terminals.Select(t =>
                portsOf.TryGetValue(new(device, t), out var ports)
                    ? (IReadOnlyList<int>)[(ports.Find(p => p.Above == entering) ?? ports[0]).Index]
                    : []
            ),
        ];

    /// <summary>Branches of one width meet conductor by conductor.</summary>
    private static IReadOnlyList<IReadOnlyList<int>> SideBySide(
        IEnumerable<IReadOnlyList<IReadOnlyList<int>>> ends
    )
    {
        var all = ends.Where(e => e.Count > 0).ToList();
        return all.Count == 0
            ? []
            :
            [
                .. Enumerable
                    .Range(0, all.Max(e => e.Count))
                    .Select(i => (IReadOnlyList<int>)[.. all.Where(e => i < e.Count).SelectMany(e => e[i])]),
            ];
    }

    private void JoinAll(IReadOnlyList<IReadOnlyList<int>> before, IReadOnlyList<IReadOnlyList<int>> after)
    {
        for (var i = 0; i < Math.Min(before.Count, after.Count); i++)
            if (before[i].Concat(after[i]).ToList() is [var first, .. var others])
                others.ForEach(o => Join(first, o));
    }

    private int NodeOf(string name)
    {
        if (nodes.TryGetValue(name, out var node))
            return node;
        parent.Add(parent.Count);
        return nodes[name] = parent.Count - 1;
    }

    /// <summary>What wire lists join, and chains that the power sheet does not draw.</summary>
    private void JoinRest(PanelNet net)
    {
        var ports = net.Terminals.SelectMany(t => portsOf.GetValueOrDefault(t, [])).ToList();
        var bars = net
            .Terminals.Select(t => portsOf.GetValueOrDefault(t, []))
            .Where(p => p.Count == 2)
            .ToList();
        for (var i = 1; i < ports.Count; i++)
            if (!Reaches(ports[0].Index, ports[i].Index, bars))
                Join(ports[0].Index, ports[i].Index);
    }

    private bool Reaches(int from, int to, IReadOnlyList<List<Port>> bars)
    {
        var reached = new HashSet<int> { Root(from) };
        for (var grown = true; grown; )
        {
            grown = false;
            foreach (var bar in bars)
            {
                var (a, b) = (Root(bar[0].Index), Root(bar[1].Index));
                if (reached.Contains(a) != reached.Contains(b))
                    grown = reached.Add(a) | reached.Add(b);
            }
        }
        return reached.Contains(Root(to));
    }

    private int Root(int index)
    {
        while (parent[index] != index)
            index = parent[index] = parent[parent[index]];
        return index;
    }

    private void Join(int a, int b)
    {
        var (low, high) = (Math.Min(Root(a), Root(b)), Math.Max(Root(a), Root(b)));
        parent[high] = low;
    }
}
