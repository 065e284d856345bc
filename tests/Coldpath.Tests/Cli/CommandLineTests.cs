using Coldpath.Cli;
using Coldpath.Inspection;
using Coldpath.Notation;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

public class CommandLineTests
{
    [Fact]
    public void Help_lists_the_commands_and_gives_examples()
    {
        using var desk = new Desk();
        var ran = desk.Run("--help");
        ran.Exit.Should().Be(Exit.Clean);
        ran.Out.Should()
            .ContainAll(
                "check",
                "live",
                "why",
                "isolate",
                "draw",
                "explain",
                "kinds",
                "fmt",
                "export",
                "completion"
            );
        ran.Out.Should().Contain("Examples:");
    }

    [Theory]
    [InlineData("check")]
    [InlineData("live")]
    [InlineData("why")]
    [InlineData("isolate")]
    [InlineData("draw")]
    [InlineData("explain")]
    [InlineData("kinds")]
    [InlineData("fmt")]
    [InlineData("completion")]
    [InlineData("export", "netlist")]
    public void Every_command_has_help_with_examples(params string[] command)
    {
        using var desk = new Desk();
        var ran = desk.Run([.. command, "--help"]);
        ran.Exit.Should().Be(Exit.Clean);
        ran.Out.Should().Contain("Examples:").And.Contain("coldpath " + string.Join(' ', command));
    }

    [Fact]
    public void The_version_is_that_of_the_library()
    {
        using var desk = new Desk();
        desk.Run("--version").Out.Should().Be(Workbench.Version + "\n");
        typeof(Workbench).Assembly.GetName().Version!.ToString(3).Should().Be(Workbench.Version);
    }

    [Theory]
    [InlineData]
    [InlineData("chekc", "a.panel")]
    [InlineData("check")]
    [InlineData("check", "a.panel", "--format", "yaml")]
    [InlineData("check", "a.panel", "--fail-on", "disaster")]
    [InlineData("live", "a.panel", "--set", "S1")]
    [InlineData("live", "a.panel", "--set", "=HAND")]
    [InlineData("live", "a.panel", "--from", "nowhere")]
    [InlineData("live", "a.panel", "--format", "sarif")]
    [InlineData("isolate", "a.panel")]
    [InlineData("explain", "no-such-check")]
    [InlineData("kinds", "no", "such", "kind")]
    [InlineData("completion", "cmd")]
    public void Wrong_use_is_2_and_says_so_on_the_error_stream_alone(params string[] arguments)
    {
        using var desk = new Desk();
        var ran = desk.With("a.panel", "").Run(arguments);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Out.Should().BeEmpty();
        ran.Error.Should().StartWith("coldpath: ");
    }

    [Fact]
    public void A_misspelt_command_or_check_is_named_with_what_was_meant()
    {
        using var desk = new Desk();
        desk.Run("chekc", "a.panel")
            .Error.Should()
            .StartWith("coldpath: there is no command 'chekc'; did you mean 'check'?\n");
        desk.Run("explain", "way-without-overlod")
            .Error.Should()
            .Contain("did you mean 'way-without-overload'?");
        desk.Run("kinds", "contcator").Error.Should().Contain("did you mean 'contactor'?");
    }

    [Fact]
    public void A_file_that_is_not_there_is_2()
    {
        using var desk = new Desk();
        var ran = desk.Run("check", "missing.panel");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Be("coldpath: cannot read missing.panel: there is no such file\n");
    }

    [Fact]
    public void A_directory_without_panels_is_2_rather_than_clean()
    {
        using var desk = new Desk();
        var ran = desk.With("sub/readme.md", "").Run("check", "sub");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("no .panel file in sub");
    }

    [Fact]
    public void What_is_not_utf8_is_2()
    {
        using var desk = new Desk();
        File.WriteAllBytes(desk.At("latin.panel"), [0x70, 0xE4, 0x0A]);
        var ran = desk.Run("check", "latin.panel");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("not UTF-8");
    }

    [Fact]
    public void What_is_too_large_is_2()
    {
        using var desk = new Desk();
        using (var file = File.Create(desk.At("large.panel")))
            file.SetLength(Limits.FileBytes + 1L);
        var ran = desk.Run("check", "large.panel");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("larger than 4 MB");
    }

    [Fact]
    public void Interrupted_work_is_3()
    {
        using var desk = new Desk();
        desk.With("a.panel", BasePanels.Text("direct-on-line"));
        foreach (
            var arguments in new[]
            {
                "check a.panel",
                "live a.panel",
                "why a.panel M1:U",
                "isolate a.panel M1",
            }
        )
        {
            var ran = Ran.In(desk.Path, arguments.Split(' '), interrupted: true);
            ran.Exit.Should().Be(Exit.Unfinished);
            ran.Out.Should()
                .NotContain("dead in this state")
                .And.NotContain("minimal set")
                .And.NotContain("nothing can");
        }
    }

    [Fact]
    public void A_defect_of_the_program_is_3_with_an_apology_and_no_trace()
    {
        using var desk = new Desk();
        using var outside = new Outside
        {
            In = new MemoryStream(),
            Out = new ThrowingWriter(),
            Error = new StringWriter(),
            Directory = desk.Path,
        };
        CommandLine.Run(["completion", "bash"], outside).Should().Be(Exit.Unfinished);
        outside
            .Error.ToString()
            .Should()
            .Contain("sorry")
            .And.Contain("please report")
            .And.NotContain("   at ");
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    public void Completion_prints_a_script(string shell)
    {
        using var desk = new Desk();
        desk.Run("completion", shell).Out.Should().Contain("[suggest:").And.EndWith("\n");
    }

    [Fact]
    public void Commands_and_values_are_suggested()
    {
        using var desk = new Desk();
        desk.Run("[suggest:11]", "coldpath is").Out.Should().Contain("isolate");
        desk.Run("[suggest:24]", "coldpath check --format ").Out.Should().ContainAll("json", "sarif", "text");
    }

    private sealed class ThrowingWriter : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("out of ink");
    }
}
