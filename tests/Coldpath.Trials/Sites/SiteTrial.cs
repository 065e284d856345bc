using System.Diagnostics;
using System.Globalization;
using Coldpath.Circuit.Diagrams;

namespace Coldpath.Trials.Sites;

/// <summary>What it costs to check a site: time and memory by the number of its starters.</summary>
internal static class SiteTrial
{
    public static int Run(IReadOnlyList<string> sizes)
    {
        Console.WriteLine(
            $"{"starters", 8} {"panels", 7} {"read s", 8} {"check s", 9} {"ms/starter", 10} {"peak MB", 8} {"findings", 8}"
        );
        int[] all =
            sizes.Count == 0 ? [10, 100] : [.. sizes.Select(s => int.Parse(s, CultureInfo.InvariantCulture))];
        Measure(10, false);
        foreach (var starters in all)
            Measure(starters, true);
        return 0;
    }

    private static void Measure(int starters, bool print)
    {
        var source = SiteGenerator.Write(starters, 1);
        var watch = Stopwatch.StartNew();
        var plan = CheckPlan.Of(source, CancellationToken.None);
        var read = watch.Elapsed.TotalSeconds;
        var findings = 0;
        var incomplete = 0;
        foreach (var piece in plan.Pieces)
        {
            var own = Stopwatch.StartNew();
            var report = piece.Check();
            if (Environment.GetEnvironmentVariable("EACH") is not null)
                Console.WriteLine(
                    $"  {piece.Name, -8} {own.Elapsed.TotalMilliseconds, 9:0.0} ms {report.States, 20} states {report.CanFail, 4} failures {report.Findings.Count, 4} findings"
                );
            findings += report.Findings.Count;
            if (!report.Complete && incomplete++ < 3)
                foreach (var line in report.Findings.Select(f => f.Message).Concat(report.Incomplete).Take(5))
                    Console.WriteLine($"  {piece.Name}: {line}");
        }
        var total = watch.Elapsed.TotalSeconds - read;
        if (print)
            Console.WriteLine(
                $"{starters, 8} {plan.Pieces.Count, 7} {read, 8:0.00} {total, 9:0.00} {total * 1000 / starters, 10:0.0} {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6, 8:0} {findings, 8}"
            );
    }
}
