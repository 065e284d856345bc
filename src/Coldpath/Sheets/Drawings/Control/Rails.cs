namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Which nets are the upright lines that rungs begin and end at.</summary>
internal sealed class Rails
{
    private readonly IReadOnlySet<string> left;
    private readonly IReadOnlySet<string> right;
    private readonly Knots knots;

    /// <param name="rungs">In order.</param>
    /// <param name="isFed">Whether a supply conductor stands behind a net.</param>
    /// <param name="isOnPower">Whether a net comes from the power sheet.</param>
    public Rails(
        IReadOnlyList<Rung> rungs,
        Knots knots,
        Func<string, bool> isFed,
        Func<string, bool> isOnPower
    )
    {
        this.knots = knots;
        var begin = Counted(rungs.Select(r => NodeNet(r.Start)));
        var end = Counted(rungs.Select(r => NodeNet(r.End)));
        left = Chosen(begin, end);
        right = Chosen(end, begin);

        HashSet<string> Chosen(Dictionary<string, int> here, Dictionary<string, int> there) =>
            [
                .. here.Where(h =>
                        there.TryGetValue(h.Key, out var others)
                            ? isOnPower(h.Key) && h.Value > others
                            : isFed(h.Key) || h.Value > 1
                    )
                    .Select(h => h.Key),
            ];
    }

    /// <summary>The net of the rail that the rung begins at; null when it begins elsewhere.</summary>
    public string? LeftOf(Rung rung) => NodeNet(rung.Start) is { } net && left.Contains(net) ? net : null;

    public string? RightOf(Rung rung) => NodeNet(rung.End) is { } net && right.Contains(net) ? net : null;

    /// <summary>The net of a node at a rung's end; null for anything else.</summary>
    public string? NodeNet(RungPiece? piece) => piece is RungNode node ? knots.NetOf(node.At) : null;

    private static Dictionary<string, int> Counted(IEnumerable<string?> nets) =>
        nets.OfType<string>()
            .GroupBy(n => n, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count());
}
