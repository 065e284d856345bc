using Coldpath.Answers;
using Coldpath.Standards;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>How a point is live, in words.</summary>
internal static class ReachText
{
    /// <summary>"LIVE" or "dead" in the rule set's words; capitals, so that it does not hang on colour.</summary>
    public static string Word(PointReach reach, Vocabulary words) =>
        reach.Reach switch
        {
            Reach.Dead => words.Dead,
            Reach.Unknown => $"TAKE AS {words.Live.ToUpperInvariant()}",
            _ => words.Live.ToUpperInvariant(),
        };

    public static string How(PointReach reach, Vocabulary words)
    {
        var how = reach.Reach switch
        {
            Reach.Solid => "solidly",
            Reach.Load => "through a load or leakage",
            Reach.Backfeed => "by backfeed",
            Reach.Stored => "stored energy",
            Reach.Unknown => "not decided",
            _ => "",
        };
        if (reach.ExtraLow)
            how += $", {words.ExtraLowVoltage}";
        return reach.Doubt is { } doubt ? $"{how}; {doubt}" : how;
    }

    /// <summary>"M1:U stays live solidly from MAINS" with its path below.</summary>
    public static void WriteStaying(Page page, PointReach reach, Vocabulary words)
    {
        page.Line(
            $"  {reach.Point} stays {words.Live} {How(reach, words)}, from {string.Join(", ", reach.From)}",
            Style.Danger
        );
        FindingText.WritePath(page, reach.Path);
    }

    /// <summary>A row for the points of one device that are alike; nodes, which have no device, alike.</summary>
    public static void WriteTable(Page page, IEnumerable<PointReach> points, Vocabulary words)
    {
        var table = new Table("place", "part", "is", "from", "how", "points");
        foreach (var alike in points.GroupBy(p => Cells(p, words)).OrderBy(g => g.Key.Place.Length == 0))
            table.Add(
                Style.Danger,
                alike.Key.Place,
                alike.Key.Device,
                alike.Key.Word,
                alike.Key.From,
                alike.Key.How,
                string.Join(" ", alike.Select(p => p.Point[DeviceOf(p.Point).Length..].TrimStart(':')))
            );
        table.WriteTo(page);
    }

    private static Row Cells(PointReach point, Vocabulary words) =>
        new(
            point.Place ?? "",
            DeviceOf(point.Point),
            Word(point, words),
            string.Join(", ", point.From),
            How(point, words)
        );

    private static string DeviceOf(string point) =>
        point[..Math.Max(0, point.IndexOf(':', StringComparison.Ordinal))];

    private sealed record Row(string Place, string Device, string Word, string From, string How);
}
