using Coldpath.Answers;
using Coldpath.Circuit.Failures;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>Which failures suffice for something, each with its story; or every failure and how it shows.</summary>
public static class FailuresText
{
    public static Page Of(FailuresAnswer answer)
    {
        var page = new Page();
        page.Line($"{answer.Panel}: {answer.Question ?? "what can fail, and how it shows"}", Style.Strong);
        if (answer.Question is not null)
            WriteSets(page, answer);
        if (answer.Failures.Count > 0)
            WriteFailures(page.Line(), answer);
        if (answer.Incomplete.Count > 0)
            WriteIncomplete(page.Line(), answer);
        return Footing.Write(page.Line(), answer.RestsOn, answer.Assumed);
    }

    private static void WriteSets(Page page, FailuresAnswer answer)
    {
        page.Line("  " + Summary(answer));
        var says = answer.Failures.ToDictionary(f => f.Variable, f => f.Says);
        foreach (var (index, set) in answer.Sets.Index())
        {
            var members = set.Failures.Select(f => says[f]).ToArray();
            page.Line();
            page.Line(
                $"  {index + 1}  {(members.Length == 0 ? "without any failure" : string.Join(", and ", members))}",
                Style.Danger
            );
            FindingText.WriteStory(page, set.Story);
        }
    }

    private static string Summary(FailuresAnswer answer)
    {
        var most = Count.Of(answer.Most, "failure", "failures");
        if (!answer.Complete && answer.Count.IsZero)
            return $"not decided for combinations of up to {most}";
        if (answer.Count.IsZero)
            return answer.IsLine
                ? $"holds: no combination of up to {most} undoes it"
                : $"no combination of up to {most} brings this about, nor does it come about without any";
        var shown = answer.Count > answer.Sets.Count ? $"; the first {answer.Sets.Count} follow" : "";
        var undone = answer.IsLine ? "undone by " : "";
        return $"{undone}{Count.Of(answer.Count, "minimal combination", "minimal combinations")} of up to {most}{shown}";
    }

    private static void WriteIncomplete(Page page, FailuresAnswer answer)
    {
        page.Line("not decided", Style.Danger);
        foreach (var reason in answer.Incomplete)
            page.Line($"  {reason}", Style.Danger);
    }

    private static void WriteFailures(Page page, FailuresAnswer answer)
    {
        var table = new Table("failure", "name", "before the next one comes");
        foreach (var failure in answer.Failures)
            table.Add(Style.Plain, failure.Says, failure.Variable, Disclosed(failure));
        table.WriteTo(page);
    }

    private static string Disclosed(FailureTold failure) =>
        failure.Disclosure switch
        {
            Disclosure.Impossible => "cannot happen",
            Disclosure.Hidden => "no single operation shows it",
            _ => $"shows: {string.Join(", ", failure.Shows)}",
        };
}
