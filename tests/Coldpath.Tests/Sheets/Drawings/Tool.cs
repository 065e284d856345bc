using System.Diagnostics;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>Programs that the tests look at drawings with; <c>.ci/test</c> installs them.</summary>
internal static class Tool
{
    /// <summary>What the program printed; it must end well.</summary>
    public static (string Out, string Error) Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        process.ExitCode.Should().Be(0, $"{program} {string.Join(' ', arguments)}: {error.Result}");
        return (output, error.Result);
    }

    /// <summary>The page as the browser holds it in the end, and what it logged.</summary>
    public static (string Dom, string Log) Browse(string file)
    {
        var profile = Directory.CreateTempSubdirectory("coldpath-browser");
        try
        {
            return Run(
                "chromium",
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                $"--user-data-dir={profile.FullName}",
                "--enable-logging=stderr",
                "--v=0",
                "--virtual-time-budget=5000",
                "--dump-dom",
                new Uri(file).AbsoluteUri
            );
        }
        finally
        {
            profile.Delete(true);
        }
    }
}
