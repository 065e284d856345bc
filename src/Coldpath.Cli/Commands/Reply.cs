using Coldpath.Sheets.Reports.Text;

namespace Coldpath.Cli.Commands;

/// <summary>Hands out an answer, or says why there is none.</summary>
internal static class Reply
{
    /// <param name="outside">Where it goes.</param>
    /// <param name="answered">The answer, or what stood in its way.</param>
    /// <param name="format">"text" or "json".</param>
    /// <param name="text">The answer as a page.</param>
    /// <param name="json">The answer as a document.</param>
    /// <param name="exit">How an answer ends the process.</param>
    public static Exit Give<T>(
        Outside outside,
        Answered<T> answered,
        string format,
        Func<T, Page> text,
        Func<T, string> json,
        Func<T, Exit> exit
    )
        where T : class
    {
        outside.Interrupted.ThrowIfCancellationRequested();
        if (answered.Answer is not { } answer)
            return Refuse(outside, answered);
        if (format == "json")
            outside.Out.Write(json(answer));
        else
            Terminal.Print(outside, text(answer));
        return exit(answer);
    }

    /// <summary>Findings that stand in the way go to the error stream: they are not the answer.</summary>
    public static Exit Refuse<T>(Outside outside, Answered<T> answered)
        where T : class
    {
        var page = new Page();
        foreach (var finding in answered.Findings)
        {
            FindingText.Write(page, finding);
            page.Line();
        }
        Terminal.Complain(outside, page);
        Terminal.Complain(outside, answered.Problem ?? "the description cannot be used; no answer");
        return Exit.Unusable;
    }
}
