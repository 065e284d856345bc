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

    public static void WriteTable(Page page, IEnumerable<PointReach> points, Vocabulary words)
    {
        var table = new Table("point", "is", "from", "how", "place");
        foreach (var point in points)
            table.Add(
                point.Reach == Reach.Dead ? Style.Plain : Style.Danger,
                point.Point,
                Word(point, words),
                string.Join(", ", point.From),
                How(point, words),
                point.Place ?? ""
            );
        table.WriteTo(page);
    }
}
