using Coldpath.Standards;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>What stands below every answer about live parts.</summary>
internal static class Footing
{
    /// <summary>What it rests on, what was assumed, the cautions.</summary>
    public static Page Write(Page page, IReadOnlyList<string> restsOn, IReadOnlyList<string> assumed) =>
        page.Block("rests on", restsOn).Block("assumed", assumed).Block("cautions", Cautions.All);

    public static void WriteIncomplete(Page page, IReadOnlyList<string> reasons, Vocabulary words)
    {
        page.Line($"NOT COMPLETE: take as {words.Live} whatever is not proved {words.Dead}", Style.Danger);
        foreach (var reason in reasons)
            page.Line($"  {reason}", Style.Danger);
    }
}
