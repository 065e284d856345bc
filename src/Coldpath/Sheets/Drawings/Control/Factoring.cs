using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// Branches that all begin or all end at one node, <c>( coil K1 -> 2 | coil K2 -> 2 )</c>, drawn as a group that
/// stands before or behind that node.
/// </summary>
internal static class Factoring
{
    public static ChainPiece Of(ChainPiece root) => Ended(Begun(root));

    private static ChainPiece Ended(ChainPiece piece)
    {
        var pieces = PiecesOf(piece);
        if (pieces[^1] is not InParallel group)
            return piece;
        var branches = group.Branches.Select(Ended).ToList();
        var last = branches
            .Select(b => PiecesOf(b) is [_, .., NodeStop { Name: not PanelWires.Earth } node] ? node : null)
            .ToList();
        if (last.Any(n => n is null || n.Name != last[0]!.Name))
            return Row([.. pieces.SkipLast(1), group with { Branches = branches }], piece);
        var rest = branches.Select(b => Row([.. PiecesOf(b).SkipLast(1)], b)).ToList();
        return Row([.. pieces.SkipLast(1), group with { Branches = rest }, last[0]!], piece);
    }

    private static ChainPiece Begun(ChainPiece piece)
    {
        var pieces = PiecesOf(piece);
        if (pieces[0] is not InParallel group)
            return piece;
        var branches = group.Branches.Select(Begun).ToList();
        var first = branches
            .Select(b => PiecesOf(b) is [NodeStop { Name: not PanelWires.Earth } node, _, ..] ? node : null)
            .ToList();
        if (first.Any(n => n is null || n.Name != first[0]!.Name))
            return Row([group with { Branches = branches }, .. pieces.Skip(1)], piece);
        var rest = branches.Select(b => Row([.. PiecesOf(b).Skip(1)], b)).ToList();
        return Row([first[0]!, group with { Branches = rest }, .. pieces.Skip(1)], piece);
    }

    private static IReadOnlyList<ChainPiece> PiecesOf(ChainPiece piece) =>
        piece is InSeries { Pieces.Count: > 0 } series ? series.Pieces : [piece];

    private static ChainPiece Row(IReadOnlyList<ChainPiece> pieces, ChainPiece of) =>
        pieces.Count == 1 ? pieces[0] : new InSeries(pieces, of.Span);
}
