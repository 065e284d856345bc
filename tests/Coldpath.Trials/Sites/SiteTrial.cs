using System.Diagnostics;
using System.Globalization;

namespace Coldpath.Trials.Sites;

/// <summary>
/// What it costs to check a site: time, memory and diagram nodes by the number of its starters, on one core and on two,
/// with each panel searched by itself and with those alike searched once; and the exponent of time from 100 starters on.
/// </summary>
/// <remarks>Peak memory is the process's so far: run a size by itself to know its own.</remarks>
internal static class SiteTrial
{
    private static readonly (int Threads, bool Shares)[] Ways = [(1, false), (2, false), (2, true)];

    public static int Run(IReadOnlyList<string> sizes)
    {
        int[] all =
            sizes.Count == 0 ? [10, 100] : [.. sizes.Select(s => int.Parse(s, CultureInfo.InvariantCulture))];
        Console.WriteLine(
            $"{"starters", 8} {"panels", 7} {"cores", 5} {"alike once", 10} {"read s", 8} {"check s", 9} {"cpu s", 8} {"ms/starter", 10} {"nodes/starter", 13} {"peak MB", 8} {"findings", 8}"
        );
        // The first checks of a process are slow: they are compiled as they run.
        Check(30, 1, shares: false);
        var times = new List<(int Starters, double Seconds)>();
        foreach (var starters in all)
        foreach (var (threads, shares) in Ways)
        {
            var seconds = Check(starters, threads, shares);
            if (threads == 1 && starters >= 100)
                times.Add((starters, seconds));
        }
        if (times.Count > 1)
            Console.WriteLine($"exponent on one core, from 100 starters on: {Exponent(times):0.00}");
        return 0;
    }

    /// <summary>Least squares of log time over log size.</summary>
    private static double Exponent(IReadOnlyList<(int Starters, double Seconds)> times)
    {
        var (x, y) = (
            times.Select(t => Math.Log(t.Starters)).ToArray(),
            times.Select(t => Math.Log(t.Seconds)).ToArray()
        );
        var (meanX, meanY) = (x.Average(), y.Average());
        return x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
    }

    private static double CpuSeconds => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;

    /// <returns>Seconds in all.</returns>
    private static double Check(int starters, int threads, bool shares)
    {
        GC.Collect();
        var source = SiteGenerator.Write(starters, 1);
        using var nodes = new NodeMeter();
        var started = CpuSeconds;
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
        var total = watch.Elapsed.TotalSeconds;
        var peak = Process.GetCurrentProcess().PeakWorkingSet64 / 1e6;
        Console.WriteLine(
            $"{starters, 8} {plan.Pieces.Count, 7} {threads, 5} {(shares ? "yes" : "no"), 10} {read, 8:0.00} {total - read, 9:0.00} {CpuSeconds - started, 8:0.00} {total * 1000 / starters, 10:0.0} {nodes.Made / starters, 13:N0} {peak, 8:0} {findings, 8}"
                + (incomplete == 0 ? "" : $"  {incomplete} not complete")
        );
        return total;
    }
}
