using System.CommandLine;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Sarif;
using Coldpath.Sheets.Reports.Text;
using Coldpath.Sites;

namespace Coldpath.Cli.Commands;

/// <summary>check: what is wrong with these panels.</summary>
internal sealed class CheckCommand(
    Outside outside,
    string format,
    Severity failOn,
    int failures,
    string? output,
    int threads
)
{
    public static Command Build(Outside outside)
    {
        var files = Arguments.Files(".panel files, directories of them, or - for the standard input");
        var format = Arguments.Format("text", "json", "sarif");
        var failOn = new Option<string>("--fail-on")
        {
            Description = "the least severity that makes the exit code 1",
            DefaultValueFactory = _ => "caution",
            HelpName = "note|caution|defect|danger",
        };
        failOn.AcceptOnlyFromAmong("note", "caution", "defect", "danger");
        var failures = Arguments.Failures(standard: 1);
        var output = Arguments.Output();
        var threads = Arguments.Threads();
        var command = new Command("check", "Search every state of a panel and say what is wrong with it.")
        {
            files,
            format,
            failOn,
            failures,
            output,
            threads,
        };
        command.SetAction(parsed =>
            (int)
                new CheckCommand(
                    outside,
                    parsed.GetRequiredValue(format),
                    SeverityOf(parsed.GetRequiredValue(failOn)),
                    parsed.GetValue(failures),
                    parsed.GetValue(output),
                    parsed.GetRequiredValue(threads)
                ).Run(parsed.GetRequiredValue(files))
        );
        return command;
    }

    private Exit Run(string[] paths)
    {
        var files = Sources.Find(paths, outside);
        var pieces = Pieces(files);
        var single = pieces.Count == 1 && files is [var only] && paths is [var asked] && only == asked;
        var delivery = new Delivery(outside, output);
        var progress = new Progress(outside, pieces.Count);
        var reports = new List<CheckReport>();
        progress.Say($"checking {pieces[0].Name}");
        foreach (var report in new Crew<CheckPiece, CheckReport>(threads, piece => piece.Check()).Do(pieces))
        {
            progress.Clear();
            if (report.Complete)
                outside.Interrupted.ThrowIfCancellationRequested();
            reports.Add(report);
            if (format == "text")
                delivery.Put(CheckText.Of(report));
            if (reports.Count < pieces.Count)
                progress.Say($"checking {pieces[reports.Count].Name}");
        }
        Close(delivery, reports, single);
        delivery.Finish();
        return Worst(reports);
    }

    /// <summary>What can only be written when every report is there.</summary>
    private void Close(Delivery delivery, List<CheckReport> reports, bool single)
    {
        if (format == "json")
            delivery.Put(single ? CheckJson.Of(reports[0]) : CheckJson.Of(reports));
        else if (format == "sarif")
            delivery.Put(SarifLog.Of(reports, Workbench.Cards, Workbench.Version));
        else if (!single)
            delivery.Put(new Page().Line().Join(CheckText.Total(reports)));
    }

    /// <summary>What there is to do, file by file; a file that a site includes is checked as a panel of the site.</summary>
    private List<CheckPiece> Pieces(IReadOnlyList<string> files)
    {
        var plans = files.Select(file => (File: file, Plan: PlanOf(file))).ToArray();
        var included = plans.SelectMany(p => p.Plan?.Files ?? []).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. plans
                .Where(p => p.Plan is not { Files: [], Source: var name } || !included.Contains(name))
                .SelectMany(p => p.Plan?.Pieces ?? [new CheckPiece(p.File, () => Unread(p.File))]),
        ];
    }

    /// <summary>Null when the file cannot be read, which is said in its turn.</summary>
    private CheckPlan? PlanOf(string file)
    {
        try
        {
            return CheckPlan.Of(Read(file), outside.Interrupted, failures);
        }
        catch (UnreadableException)
        {
            return null;
        }
    }

    private CheckReport Unread(string file) => Workbench.Check(Read(file), outside.Interrupted, failures);

    private SourceText Read(string file) =>
        Sources.Read(file, outside, format == "sarif" ? Repository.NameOf(file, outside) : null);

    private static Severity SeverityOf(string word) =>
        word switch
        {
            "note" => Severity.Note,
            "caution" => Severity.Caution,
            "defect" => Severity.Defect,
            _ => Severity.Danger,
        };

    private Exit Worst(List<CheckReport> reports)
    {
        var worst = Exit.Clean;
        foreach (var report in reports)
            if (ExitOf(report, failOn) is var exit && exit > worst)
                worst = exit;
        return worst;
    }

    internal static Exit ExitOf(CheckReport report, Severity failOn) =>
        !report.Readable ? Exit.Unusable
        : !report.Complete ? Exit.Unfinished
        : report.Findings.Any(f => f.Waived is null && f.Severity >= failOn) ? Exit.Findings
        : Exit.Clean;
}
