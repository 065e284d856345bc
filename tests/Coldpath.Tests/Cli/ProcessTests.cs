using System.Diagnostics;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

/// <summary>The program as the shell starts it.</summary>
public class ProcessTests
{
    [Fact]
    public async Task It_starts_and_ends()
    {
        using var process = Start("--version");
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        process.ExitCode.Should().Be(0);
        text.Should().Be(Workbench.Version + "\n");
    }

    [Fact]
    public async Task Wrong_use_ends_with_2_and_an_empty_output()
    {
        using var process = Start("check", "--fail-on", "disaster", "-");
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        process.ExitCode.Should().Be(2);
        text.Should().BeEmpty();
    }

    [Fact]
    public async Task An_interrupt_ends_it_with_3_and_no_trace()
    {
        // What starts the tests may have left the signal ignored, and children inherit that.
        using var process = Start("env", ["--default-signal=INT", "dotnet", Program, "check", "-"]);
        await Listens(process.Id);
        using var kill = Process.Start("kill", ["-INT", $"{process.Id}"]);
        var complaint = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        process.ExitCode.Should().Be(3);
        complaint.Should().Be("coldpath: interrupted; nothing is proved\n");
    }

    [Fact]
    public async Task A_reader_that_goes_away_is_no_defect_of_the_program()
    {
        using var process = StartShell("dotnet \"$0\" --help | true; echo ${PIPESTATUS[0]}");
        var text = await process.StandardOutput.ReadToEndAsync();
        var complaint = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        text.Trim().Should().BeOneOf("0", "3");
        complaint.Should().BeEmpty();
    }

    /// <summary>Waits until the process catches the interrupt signal (bit 1 of its mask), then a little longer.</summary>
    private static async Task Listens(int process)
    {
        const int interrupt = 1 << 1;
        while (!Caught(process, interrupt))
            await Task.Delay(20);
        await Task.Delay(500);
    }

    private static bool Caught(int process, int signal) =>
        File.ReadLines($"/proc/{process}/status")
            .Where(line => line.StartsWith("SigCgt:", StringComparison.Ordinal))
            .Any(line => (Convert.ToUInt64(line[7..].Trim(), 16) & (ulong)signal) != 0);

    private static string Program => Path.Combine(AppContext.BaseDirectory, "coldpath.dll");

    private static Process Start(params string[] arguments) => Start("dotnet", [Program, .. arguments]);

    private static Process StartShell(string script) => Start("bash", ["-c", script, Program]);

    private static Process Start(string program, IEnumerable<string> arguments) =>
        Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
}
