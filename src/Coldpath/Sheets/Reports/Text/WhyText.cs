using Coldpath.Answers;
using Coldpath.Standards;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>Why a point is live, or why nothing can make it so.</summary>
public static class WhyText
{
    public static Page Of(WhyAnswer answer)
    {
        var words = Vocabulary.For(answer.Rules);
        var page = new Page();
        switch (answer.CanBeLive)
        {
            case Verdict.Yes:
                WriteStory(page, answer, words);
                break;
            case Verdict.No:
                page.Line($"{answer.Panel}: nothing can make {answer.Point} {words.Live}", Style.Strong);
                break;
            default:
                page.Line(
                    $"{answer.Panel}: not decided whether {answer.Point} can be {words.Live}",
                    Style.Strong
                );
                Footing.WriteIncomplete(page, answer.Incomplete, words);
                break;
        }
        if (answer.Proof is { } proof)
            page.Line("  " + proof);
        return Footing.Write(page.Line(), answer.RestsOn, answer.Assumed);
    }

    private static void WriteStory(Page page, WhyAnswer answer, Vocabulary words)
    {
        page.Line($"{answer.Panel}: {answer.Point} can be {words.Live}", Style.Strong);
        if (answer.Story.Count == 0)
            page.Line($"  it is {words.Live} at rest, before anything is operated");
        FindingText.WriteStory(page, answer.Story);
        if (answer.Reach is not { } reach)
            return;
        page.Line(
            $"  then {reach.Point} is {words.Live} {ReachText.How(reach, words)}, from {string.Join(", ", reach.From)}",
            Style.Danger
        );
        FindingText.WritePath(page, reach.Path);
    }
}
