using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Nets that rungs name, or touch at a terminal: the ladder draws pieces of them.</summary>
internal sealed class RungNets
{
    private readonly HashSet<string> names = new(StringComparer.Ordinal);
    private readonly HashSet<Terminal> terminals = [];

    public RungNets(IEnumerable<Chain> rungs)
    {
        foreach (var rung in rungs)
            Add(rung.Root);
    }

    public bool Contains(PanelNet net) =>
        net.Names.Any(names.Contains) || net.Terminals.Any(terminals.Contains);

    private void Add(ChainPiece piece)
    {
        foreach (var part in PartsOf(piece))
            Add(part);
        if (piece is NodeStop node)
            names.Add(node.Name);
        if (piece is Passage passage)
            terminals.UnionWith(
                passage.Left.Concat(passage.Right).Select(t => new Terminal(passage.Device, t))
            );
    }

    private static IReadOnlyList<ChainPiece> PartsOf(ChainPiece piece) =>
        piece switch
        {
            InSeries series => series.Pieces,
            InParallel group => group.Branches,
            _ => [],
        };
}
