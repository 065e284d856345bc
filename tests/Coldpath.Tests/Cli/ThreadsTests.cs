using Coldpath.Cli;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

public class ThreadsTests
{
    private static readonly string Faulty = Path.Combine("panels", "faulty");

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void Any_number_of_threads_prints_the_same_bytes(string format)
    {
        var alone = Check(format, "1");
        alone.Out.Should().NotBeEmpty();
        foreach (var threads in new[] { "2", "5" })
            Printed(Check(format, threads)).Should().Be(Printed(alone));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("65")]
    [InlineData("-1")]
    [InlineData("many")]
    public void Other_numbers_are_refused(string threads)
    {
        var ran = Check("text", threads);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("--threads");
    }

    [Fact]
    public void An_unreadable_file_ends_it_after_what_came_before()
    {
        using var desk = new Desk().With("a.panel", "panel \"A\"\n").With("z.panel", "panel \"Z\"\n");
        var alone = desk.Run("check", "a.panel", "missing.panel", "z.panel", "--threads", "1");
        alone.Exit.Should().Be(Exit.Unusable);
        alone.Error.Should().Contain("missing.panel");
        var shared = desk.Run("check", "a.panel", "missing.panel", "z.panel", "--threads", "3");
        Printed(shared).Should().Be(Printed(alone));
    }

    [Fact]
    public void Progress_counts_on_a_terminal_and_is_nowhere_else()
    {
        string[] check = ["check", Faulty, "--threads", "2"];
        var count = Directory.GetFiles(Path.Combine(RepositoryRoot.Path, Faulty)).Length;
        var terminal = Ran.In(RepositoryRoot.Path, check, terminal: true).Error;
        terminal.Should().Contain($"1/{count} checking ").And.Contain($"{count}/{count} checking ");
        Ran.In(RepositoryRoot.Path, check).Error.Should().BeEmpty();
    }

    private static (Exit, string, string) Printed(Ran ran) => (ran.Exit, ran.Out, ran.Error);

    private static Ran Check(string format, string threads) =>
        Ran.In(RepositoryRoot.Path, ["check", Faulty, "--format", format, "--threads", threads]);
}
