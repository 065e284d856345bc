namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The edges of a set of cells as closed loops of corners.</summary>
internal static class Outline
{
    /// <summary>Loops, each without corners on its straight sides. Corner (d, a) lies above cell d and left of cell a.</summary>
    public static IEnumerable<IReadOnlyList<(int Down, int Across)>> Of(
        IReadOnlySet<(int Down, int Across)> cells
    )
    {
        var edges = new SortedDictionary<(int, int), List<(int Down, int Across)>>();
        foreach (var (d, a) in cells.Order())
        {
            if (!cells.Contains((d - 1, a)))
                Add((d, a), (d, a + 1));
            if (!cells.Contains((d, a + 1)))
                Add((d, a + 1), (d + 1, a + 1));
            if (!cells.Contains((d + 1, a)))
                Add((d + 1, a + 1), (d + 1, a));
            if (!cells.Contains((d, a - 1)))
                Add((d + 1, a), (d, a));
        }
        while (edges.Count > 0)
            yield return Straightened(Loop(edges));

        void Add((int, int) from, (int, int) to) =>
            (edges.TryGetValue(from, out var list) ? list : edges[from] = []).Add(to);
    }

    private static List<(int Down, int Across)> Loop(
        SortedDictionary<(int, int), List<(int Down, int Across)>> edges
    )
    {
        var start = edges.Keys.First();
        var loop = new List<(int Down, int Across)>();
        var at = start;
        do
        {
            loop.Add(at);
            var onwards = edges[at];
            var next = onwards[^1];
            onwards.RemoveAt(onwards.Count - 1);
            if (onwards.Count == 0)
                edges.Remove(at);
            at = next;
        } while (at != start);
        return loop;
    }

    private static List<(int Down, int Across)> Straightened(List<(int Down, int Across)> loop) =>
        [
            .. loop.Where(
                (here, i) =>
                {
                    var (before, after) = (
                        loop[(i + loop.Count - 1) % loop.Count],
                        loop[(i + 1) % loop.Count]
                    );
                    return !(before.Down == after.Down || before.Across == after.Across);
                }
            ),
        ];
}
