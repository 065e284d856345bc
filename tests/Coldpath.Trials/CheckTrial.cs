using System.Diagnostics;
using Coldpath.Findings;
using Coldpath.Inspection;

namespace Coldpath.Trials;

/// <summary>
/// Every sample panel checked whole in one process, warm: median of the runs, with the counts that do not depend on the
/// machine. Aim for the largest: 20 ms.
/// </summary>
internal static class CheckTrial
{
    private const int Runs = 20;

    public static void Run()
    {
        Console.WriteLine($"{"panel", -36} {"median ms", 9} {"nodes", 10} {"states", 16}");
        foreach (var file in Directory.GetFiles("panels", "*.panel").Order(StringComparer.Ordinal))
            Measure(new SourceText(file, File.ReadAllText(file)));
    }

    private static void Measure(SourceText source)
    {
        var times = new double[Runs];
        for (var run = -3; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            Workbench.Check(source, CancellationToken.None);
            times[Math.Max(run, 0)] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        var opened = Opened.From(source, CancellationToken.None);
        var report = Inspector.Inspect(opened.Evidence!, CancellationToken.None);
        var nodes = opened.Evidence!.Table.NodesMade;
        Console.WriteLine(
            $"{Path.GetFileName(source.Name), -36} {times[Runs / 2], 9:0.0} {nodes, 10:N0} {report.States, 16:N0}"
        );
    }
}
