namespace Coldpath.Panels.Flattening;

/// <summary>What the description leaves open and how it is taken, one sentence each.</summary>
internal static class Assumptions
{
    public static IReadOnlyList<string> Of(Panel panel) =>
        [
            .. panel.Devices.SelectMany(d => d.Blueprint.Network.Assumed.Select(a => $"{d.Tag}: {a}")),
            .. panel.Untraced.Select(u =>
                $"{u.Point} was not traced{Because(u)}: it may be live from an unknown supply and brings no protection"
            ),
            .. FromDrawing(panel),
        ];

    private static string Because(UntracedPoint untraced) =>
        untraced.Because is null ? "" : $" ({untraced.Because})";

    private static IEnumerable<string> FromDrawing(Panel panel)
    {
        var tags = panel.Devices.Where(d => d.Knowledge == Knowledge.FromDrawing).Select(d => d.Tag).ToList();
        if (tags.Count > 0)
            yield return $"taken from the drawing and not seen: {string.Join(", ", tags)}";
    }
}
