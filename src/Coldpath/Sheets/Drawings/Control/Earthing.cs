using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>
/// The earth joins nothing, so each branch of a group behind it has a wire of its own to the earth:
/// <c>PE -> ( X1:1 | X1:2 )</c> is <c>( PE -> X1:1 | PE -> X1:2 )</c>.
/// </summary>
internal static class Earthing
{
    public static ChainPiece Of(ChainPiece piece) =>
        piece switch
        {
            InSeries series => series with { Pieces = [.. Row([.. Flat(series)])] },
            InParallel group => group with { Branches = [.. group.Branches.Select(Of)] },
            _ => piece,
        };

    public static bool IsEarth(ChainPiece piece) => piece is NodeStop { Name: PanelWires.Earth };

    private static IEnumerable<ChainPiece> Row(IReadOnlyList<ChainPiece> pieces)
    {
        for (var i = 0; i < pieces.Count; i++)
            yield return i > 0 && IsEarth(pieces[i - 1]) && pieces[i] is InParallel group
                ? Of(Behind(pieces[i - 1], group))
                : Of(pieces[i]);
    }

    private static InParallel Behind(ChainPiece earth, InParallel group) =>
        group with
        {
            Branches = [.. group.Branches.Select(b => new InSeries([earth, b], b.Span))],
        };

    private static IEnumerable<ChainPiece> Flat(InSeries series) =>
        series.Pieces.SelectMany(p => p is InSeries inner ? Flat(inner) : [p]);
}
