using Coldpath.Answers;
using Coldpath.Standards;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>The isolating sets of a target, the verdict on the asker's own set, and what stays live.</summary>
public static class IsolateText
{
    public static Page Of(IsolateAnswer answer)
    {
        var words = Vocabulary.For(answer.Rules);
        var page = new Page();
        page.Line($"{answer.Panel}: {words.Isolate} {string.Join(", ", answer.Targets)}", Style.Strong);
        if (!answer.Complete)
            Footing.WriteIncomplete(page, answer.Incomplete, words);
        WriteSets(page, answer, words);
        if (answer.Have is { } have)
            WriteHave(page.Line(), have, words);
        if (answer.StaysLive.Count > 0)
            ReachText.WriteTable(
                page.Line().Line(StaysTitle(answer, words), Style.Strong),
                answer.StaysLive,
                words
            );
        WriteWholeOnly(page, answer.WholeOnly, words);
        return Footing.Write(page.Line(), answer.RestsOn, answer.Assumed);
    }

    private static string StaysTitle(IsolateAnswer answer, Vocabulary words) =>
        answer.IsImpossible && answer.Have is null
            ? $"may stay {words.Live} in the same place with every isolating device open"
            : $"may stay {words.Live} in the same place";

    private static void WriteSets(Page page, IsolateAnswer answer, Vocabulary words)
    {
        if (answer.IsImpossible)
        {
            page.Line($"no set of {words.Isolators} makes it {words.Dead}", Style.Danger);
            if (answer.Stays is { } stays)
                ReachText.WriteStaying(page, stays, words);
            return;
        }
        if (answer.Sets.Count == 0)
            return;
        page.Line(Title(answer));
        var table = new Table("set", "open and lock", "place", "");
        for (var i = 0; i < answer.Sets.Count; i++)
            AddSet(table, i + 1, answer.Sets[i]);
        table.WriteTo(page);
    }

    private static string Title(IsolateAnswer answer) =>
        answer.Count is not { } count ? "one minimal set of some number:"
        : answer.Cut ? $"{Count.Of(count, "minimal set")}; the best {answer.Sets.Count}:"
        : Count.Of(count, "minimal set");

    private static void AddSet(Table table, int number, IsolatingSet set)
    {
        var rows = set
            .Isolators.Select(i => (i.Device, i.Place ?? "", Notes(i)))
            .Concat(set.Acts.Select(act => (act, "", "")));
        var first = true;
        foreach (var (what, place, notes) in rows)
        {
            table.Add(Style.Plain, first ? $"{number}" : "", what, place, notes);
            first = false;
        }
        if (first)
            table.Add(Style.Plain, $"{number}", "nothing: no supply can reach it", "", "");
    }

    private static string Notes(Isolator isolator)
    {
        var notes = new List<string>
        {
            isolator.Lockable ? "lockable" : "NOT lockable",
            isolator.VisibleBreak ? "visible break" : "no visible break: rely on the test",
        };
        if (isolator.Rank > 1)
            notes.Add("second rank: tag, and one more measure");
        return string.Join(", ", notes);
    }

    private static void WriteHave(Page page, OwnSet have, Vocabulary words)
    {
        var devices = have.Devices.Count == 0 ? "nothing opened" : string.Join(", ", have.Devices);
        page.Line(
            $"with {devices}: {Enough(have.Enough)}",
            have.Enough == Verdict.Yes ? Style.Good : Style.Danger
        );
        foreach (var device in have.NotIsolating)
            page.Line($"  {device}", Style.Danger);
        if (have.Witness.Count > 0)
            page.Line("  when " + string.Join(", ", have.Witness.Select(w => $"{w.Key} {w.Value}")));
        if (have.Stays is { } stays)
            ReachText.WriteStaying(page, stays, words);
    }

    private static string Enough(Verdict verdict) =>
        verdict switch
        {
            Verdict.Yes => "enough",
            Verdict.No => "NOT enough",
            _ => "NOT proved to be enough",
        };

    private static void WriteWholeOnly(Page page, IReadOnlyList<WholeOnly> parts, Vocabulary words)
    {
        if (parts.Count == 0)
            return;
        page.Line().Line($"{words.Dead} only while these are whole", Style.Strong);
        foreach (var part in parts)
            page.Line($"  {part.Part}: else {string.Join(", ", part.Turns)} {words.Live}; {part.Test}");
    }
}
