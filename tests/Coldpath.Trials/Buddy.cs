using System.Diagnostics;
using System.Globalization;

namespace Coldpath.Trials;

/// <summary>Compiles and runs the C side of the diagram trial, where gcc and libbdd-dev are installed.</summary>
internal static class Buddy
{
    public sealed record Result(double Milliseconds, int Nodes, string Assignments);

    public static IReadOnlyDictionary<string, Result> Run()
    {
        var program = Path.Combine(Path.GetTempPath(), $"coldpath-buddy-{Environment.ProcessId}");
        var source = Path.Combine(AppContext.BaseDirectory, "buddy", "trial.c");
        try
        {
            Start("gcc", "-O2", "-o", program, source, "-lbdd", "-lm");
            return Start(program)
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Split(' '))
                .ToDictionary(
                    part => part[0],
                    part => new Result(
                        double.Parse(part[1], CultureInfo.InvariantCulture),
                        int.Parse(part[2], CultureInfo.InvariantCulture),
                        part[3]
                    )
                );
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException)
        {
            Console.WriteLine($"without BuDDy (needs gcc and libbdd-dev): {e.Message}");
            return new Dictionary<string, Result>();
        }
        finally
        {
            File.Delete(program);
        }
    }

    private static string Start(string file, params string[] arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo(file, arguments) { RedirectStandardOutput = true }
        )!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0
            ? output
            : throw new InvalidOperationException($"{file} ended with {process.ExitCode}");
    }
}
