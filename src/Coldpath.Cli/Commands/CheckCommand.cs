using System.CommandLine;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Sarif;
using Coldpath.Sheets.Reports.Text;

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
        var single = files is [var only] && paths is [var asked] && only == asked;
        var delivery = new Delivery(outside, output);
        var progress = new Progress(outside, files.Count);
        var reports = new List<CheckReport>();
        progress.Say($"checking {files[0]}");
        foreach (var report in new Crew<string, CheckReport>(threads, Check).Do(files))
        {
            progress.Clear();
            if (report.Complete)
                outside.Interrupted.ThrowIfCancellationRequested();
            reports.Add(report);
            if (format == "text")
                delivery.Put(CheckText.Of(report));
            if (reports.Count < files.Count)
                progress.Say($"checking {files[reports.Count]}");
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

    private CheckReport Check(string file) => Workbench.Check(Read(file), outside.Interrupted, failures);

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
