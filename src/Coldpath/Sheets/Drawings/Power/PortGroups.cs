using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// Terminals of one side that are drawn as one line in one-line form: those that the kind passes together or a
/// chain touches together.
/// </summary>
internal static class PortGroups
{
    public static IReadOnlyList<IReadOnlyList<string>> Of(
        IReadOnlyList<string> side,
        Unit unit,
        IReadOnlyList<Passage> touches
    )
    {
        var together = unit
            .Device.Blueprint.Parts.Where(p => p.Through)
            .SelectMany(p => new[] { p.Left, p.Right })
            .Concat(touches.SelectMany(t => new[] { t.Left, t.Right }));
        var group = side.ToDictionary(t => t, t => t);
        foreach (var set in together)
            if (set.Where(group.ContainsKey).ToList() is [var first, .. var others])
                foreach (var other in others)
                    Join(group, group[first], group[other]);
        return [.. side.GroupBy(t => group[t]).Select(g => (IReadOnlyList<string>)[.. g])];
    }

    private static void Join(Dictionary<string, string> group, string into, string from)
    {
        foreach (var terminal in group.Where(p => p.Value == from).Select(p => p.Key).ToList())
            group[terminal] = into;
    }
}
