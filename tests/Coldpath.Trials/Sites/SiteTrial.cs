using System.Diagnostics;
using System.Globalization;

namespace Coldpath.Trials.Sites;

/// <summary>
/// What it costs to check a site: time and memory by the number of its starters, on one core and on two, with each panel
/// searched by itself and with those alike searched once.
/// </summary>
internal static class SiteTrial
{
    private static readonly (int Threads, bool Shares)[] Ways = [(1, false), (2, false), (2, true)];

    public static int Run(IReadOnlyList<string> sizes)
    {
        int[] all =
            sizes.Count == 0 ? [10, 100] : [.. sizes.Select(s => int.Parse(s, CultureInfo.InvariantCulture))];
        Console.WriteLine(
            $"{"starters", 8} {"panels", 7} {"cores", 5} {"alike once", 10} {"read s", 8} {"check s", 9} {"ms/starter", 10} {"peak MB", 8} {"findings", 8}"
        );
        // The first checks of a process are slow: they are compiled as they run.
        Check(30, 1, shares: false);
        foreach (var starters in all)
        foreach (var (threads, shares) in Ways)
            Console.WriteLine(Check(starters, threads, shares));
        return 0;
    }

    private static string Check(int starters, int threads, bool shares)
    {
        var source = SiteGenerator.Write(starters, 1);
        var watch = Stopwatch.StartNew();
        var plan = CheckPlan.Of(source, CancellationToken.None, failures: 1, shares);
        var read = watch.Elapsed.TotalSeconds;
        var (findings, incomplete) = (0, 0);
        Parallel.ForEach(
            plan.Pieces,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            piece =>
            {
                var report = piece.Check();
                Interlocked.Add(ref findings, report.Findings.Count);
                if (!report.Complete)
                    Interlocked.Increment(ref incomplete);
            }
        );
        var total = watch.Elapsed.TotalSeconds - read;
        var peak = Process.GetCurrentProcess().PeakWorkingSet64 / 1e6;
        return $"{starters, 8} {plan.Pieces.Count, 7} {threads, 5} {(shares ? "yes" : "no"), 10} {read, 8:0.00} {total, 9:0.00} {(read + total) * 1000 / starters, 10:0.0} {peak, 8:0} {findings, 8}"
            + (incomplete == 0 ? "" : $"  {incomplete} not complete");
    }
}
