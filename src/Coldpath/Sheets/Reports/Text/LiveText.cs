using Coldpath.Answers;
using Coldpath.Standards;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>What is live in a state: the operations, how it settled, loads, and every point; the live ones first.</summary>
public static class LiveText
{
    public static Page Of(LiveAnswer answer)
    {
        var words = Vocabulary.For(answer.Rules);
        var page = new Page();
        page.Line($"{answer.Panel}: from {answer.Start}", Style.Strong);
        if (!answer.Complete)
            Footing.WriteIncomplete(page, answer.Incomplete, words);
        FindingText.WriteStory(page, answer.Steps);
        WriteSettled(page, answer.Settled);
        page.Flow([.. answer.State.Where(IsOfADevice).Select(v => $"{v.Key} {v.Value}")]);
        WriteLoads(page, answer);
        var live = answer.Points.Where(p => p.Reach != Reach.Dead).ToArray();
        if (live.Length > 0)
            ReachText.WriteTable(page.Line(), live, words);
        WriteDead(page, answer, words);
        return Footing.Write(page.Line(), answer.RestsOn, answer.Assumed);
    }

    /// <summary>A device's own variable bears its tag alone; the rest are its inner works, and in the JSON answer.</summary>
    private static bool IsOfADevice(KeyValuePair<string, string> variable) =>
        !variable.Key.Contains('.', StringComparison.Ordinal);

    private static void WriteSettled(Page page, Settled settled) =>
        _ = settled switch
        {
            Settled.Steady => page.Line("settled: steady"),
            Settled.Chatter => page.Line("does not settle: chatters", Style.Danger),
            _ => page.Line("settled: a short lasts", Style.Danger),
        };

    private static void WriteLoads(Page page, LiveAnswer answer)
    {
        if (answer.Loads.Count == 0)
            return;
        var table = new Table("load", "does");
        foreach (var (load, does) in answer.Loads)
            table.Add(Style.Plain, load, does);
        table.WriteTo(page.Line());
    }

    private static void WriteDead(Page page, LiveAnswer answer, Vocabulary words)
    {
        var dead = answer.Points.Where(p => p.Reach == Reach.Dead).Select(p => p.Point).ToArray();
        if (dead.Length > 0)
            page.Line().Line($"{words.Dead} in this state", Style.Strong).Flow(dead);
    }
}
