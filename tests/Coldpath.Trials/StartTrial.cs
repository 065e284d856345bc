using System.Diagnostics;

namespace Coldpath.Trials;

/// <summary>
/// Published commands (ReadyToRun, ahead of time) as whole processes, warm file cache, median of 20: an empty run beside a
/// check of the headline panel. Aim: 60 ms over the bare start.
/// </summary>
internal static class StartTrial
{
    private const int Runs = 20;

    /// <param name="commands">Paths of the published commands.</param>
    public static int Run(IEnumerable<string> commands)
    {
        foreach (var command in commands)
            Measure(command);
        return 0;
    }

    private static void Measure(string command)
    {
        var bare = Median(command, "--version");
        var check = Median(command, "check", "panels/quarry-pump-bypass.panel");
        Console.WriteLine(
            $"{command}: --version {bare:0} ms, check {check:0} ms, over it {check - bare:0} ms"
        );
    }

    private static double Median(string command, params string[] arguments)
    {
        var times = new double[Runs];
        Once(command, arguments);
        for (var run = 0; run < Runs; run++)
            times[run] = Once(command, arguments);
        Array.Sort(times);
        return times[Runs / 2];
    }

    private static double Once(string command, string[] arguments)
    {
        var start = new ProcessStartInfo(command, arguments) { RedirectStandardOutput = true };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return watch.Elapsed.TotalMilliseconds;
    }
}
