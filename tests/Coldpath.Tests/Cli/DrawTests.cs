using System.Text;
using System.Xml.Linq;
using Coldpath.Cli;
using Coldpath.Inspection;
using Coldpath.Tests.Sheets.Drawings;
using FluentAssertions;

namespace Coldpath.Tests.Cli;

/// <summary>draw, from arguments to files.</summary>
public sealed class DrawTests : IDisposable
{
    private readonly Desk desk = new Desk().With("fan.panel", BasePanels.Text("direct-on-line"));

    public void Dispose() => desk.Dispose();

    [Theory]
    [InlineData("fan.svg", "<svg")]
    [InlineData("fan.png", "\u0089PNG")]
    [InlineData("FAN.PDF", "%PDF")]
    public void The_ending_says_the_format(string file, string begins)
    {
        var ran = desk.Run("draw", "fan.panel", "-o", file, "--paper", "unbounded", "--sheet", "1");
        ran.Should()
            .BeEquivalentTo(
                new
                {
                    Exit = Exit.Clean,
                    Out = "",
                    Error = "",
                }
            );
        Encoding.Latin1.GetString(File.ReadAllBytes(desk.At(file))).Should().StartWith(begins);
    }

    [Theory]
    [InlineData("svg", "<svg")]
    [InlineData("png", "\u0089PNG")]
    [InlineData("pdf", "%PDF")]
    public void The_standard_output_takes_any_format(string format, string begins)
    {
        var ran = desk.Run("draw", "fan.panel", "-o", "-", "--format", format, "--sheet", "1");
        ran.Exit.Should().Be(Exit.Clean);
        Encoding.Latin1.GetString(ran.Bytes).Should().StartWith(begins);
    }

    [Fact]
    public void Every_device_of_the_panel_is_drawn()
    {
        desk.Run("draw", "fan.panel", "-o", "fan.svg", "--paper", "unbounded");
        var drawn = Directory
            .GetFiles(desk.Path, "*.svg")
            .SelectMany(f => XDocument.Load(f).Descendants().Attributes("data-device"))
            .Select(a => a.Value);
        drawn.Should().Contain(["MAINS", "Q1", "M1"]);
    }

    [Fact]
    public void Several_sheets_are_several_files_or_pages_of_one()
    {
        var ran = desk.Run("draw", "fan.panel", "-o", "fan.svg", "--paper", "a4");
        ran.Exit.Should().Be(Exit.Clean);
        ran.Error.Should().StartWith("coldpath: wrote fan-1.svg, fan-2.svg");
        desk.Read("fan-1.svg").Should().Contain("sheet 1 of");
        desk.Read("fan-2.svg").Should().Contain("sheet 2 of");
        desk.Has("fan.svg").Should().BeFalse();
        desk.Run("draw", "fan.panel", "-o", "fan.pdf", "--paper", "a4").Error.Should().BeEmpty();
        Tool.Run("pdfinfo", desk.At("fan.pdf")).Out.Should().NotMatchRegex(@"Pages:\s+1\n");
        desk.Run("draw", "fan.panel", "-o", "second.svg", "--paper", "a4", "--sheet", "2");
        desk.Read("second.svg").Should().Be(desk.Read("fan-2.svg"));
    }

    [Fact]
    public void The_standard_output_takes_one_sheet()
    {
        var ran = desk.Run("draw", "fan.panel", "-o", "-", "--format", "svg", "--paper", "a4");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("add --sheet N");
        ran.Bytes.Should().BeEmpty();
    }

    [Fact]
    public void One_line_form_is_another_drawing()
    {
        desk.Run("draw", "fan.panel", "-o", "3.svg", "--sheet", "1");
        desk.Run("draw", "fan.panel", "-o", "1.svg", "--sheet", "1", "--lines", "1");
        desk.Read("1.svg").Should().NotBe(desk.Read("3.svg")).And.Contain("data-device=\"M1\"");
    }

    [Fact]
    public void A_state_is_drawn_with_its_tones_and_said_in_words()
    {
        desk.Run("draw", "fan.panel", "-o", "rest.svg", "--sheet", "1", "--from", "rest");
        desk.Run("draw", "fan.panel", "-o", "powered.svg", "--sheet", "1", "--from", "powered");
        desk.Run("draw", "fan.panel", "-o", "wiring.svg", "--sheet", "1");
        ToneOf("rest.svg", "M1:U").Should().Be("Dead");
        Tones("powered.svg").Should().Contain("SolidlyLive");
        Tones("wiring.svg").Should().BeEmpty();
        desk.Read("rest.svg").Should().Contain("from rest").And.NotBe(desk.Read("powered.svg"));
    }

    [Fact]
    public void A_finding_marks_what_it_names()
    {
        desk.With(
            "bad.panel",
            File.ReadAllText(Path.Combine(Samples.Root, "panels/faulty/way-without-overload.panel"))
        );
        var ran = desk.Run(
            "draw",
            "bad.panel",
            "-o",
            "bad.svg",
            "--sheet",
            "1",
            "--finding",
            "way-without-overload"
        );
        ran.Error.Should().BeEmpty();
        Tones("bad.svg").Should().Contain("Marked");
        desk.Read("bad.svg").Should().Contain("way-without-overload");
    }

    /// <summary>The way of a current tells amperes and direction; the wires between its parts are marked all the same.</summary>
    [Fact]
    public void A_sneak_path_is_marked_from_end_to_end()
    {
        desk.With(
            "sneak.panel",
            File.ReadAllText(Path.Combine(Samples.Root, "panels/faulty/sneak-path.panel"))
        );
        desk.Run("draw", "sneak.panel", "-o", "sneak.svg", "--paper", "unbounded", "--finding", "sneak-path")
            .Error.Should()
            .BeEmpty();
        foreach (var net in new[] { "1", "K1:24", "103", "2" })
            desk.Read("sneak.svg").Should().MatchRegex($"data-net=\"{net}\"[^>]*data-tone=\"Marked\"");
    }

    [Fact]
    public void A_finding_that_is_not_there_is_not_drawn()
    {
        var ran = desk.Run("draw", "fan.panel", "-o", "bad.svg", "--finding", "way-without-overload");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Be("coldpath: check does not find way-without-overload here: it finds nothing\n");
        desk.Has("bad.svg").Should().BeFalse();
    }

    [Theory]
    [InlineData("-o fan.gif", "does not say the format")]
    [InlineData("-o fan", "does not say the format")]
    [InlineData("-o -", "does not say the format")]
    [InlineData("", "-o")]
    [InlineData("-o a.svg --lines 2", "'2'")]
    [InlineData("-o a.svg --paper b5", "'b5'")]
    [InlineData("-o a.svg --sheet 0", "--sheet counts from 1")]
    [InlineData("-o a.svg --sheet 99", "there is no sheet 99")]
    [InlineData("-o a.png --dpi 5", "--dpi expects a number from 20 to 1200")]
    [InlineData("-o a.svg --set S1", "NAME=VALUE")]
    [InlineData("-o a.svg --set S99=on", "nothing here is called S99")]
    [InlineData("-o a.svg --finding x --from rest", "two drawings")]
    public void Wrong_use_is_told(string options, string complaint)
    {
        var ran = desk.Run([
            "draw",
            "fan.panel",
            .. options.Split(' ', StringSplitOptions.RemoveEmptyEntries),
        ]);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain(complaint);
    }

    [Fact]
    public void A_text_that_is_no_panel_gives_its_findings_and_no_file()
    {
        desk.With("broken.panel", "panel \"x\"\n  rules IEC\ncontactor\n");
        var ran = desk.Run("draw", "broken.panel", "-o", "a.svg");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("broken.panel:3").And.Contain("no answer");
        desk.Has("a.svg").Should().BeFalse();
    }

    [Fact]
    public void A_picture_does_not_go_to_a_terminal()
    {
        var ran = Ran.In(desk.Path, ["draw", "fan.panel", "-o", "-", "--format", "pdf"], terminal: true);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Bytes.Should().BeEmpty();
    }

    [Fact]
    public void The_same_panel_gives_the_same_bytes()
    {
        foreach (var format in new[] { "svg", "pdf" })
        {
            string[] arguments = ["draw", "fan.panel", "-o", "-", "--format", format, "--sheet", "1"];
            desk.Run(arguments).Bytes.Should().Equal(desk.Run(arguments).Bytes);
        }
    }

    [Fact]
    public void It_opens_in_a_browser_without_a_word()
    {
        desk.Run("draw", "fan.panel", "-o", "a.svg", "--sheet", "1");
        var (dom, log) = Tool.Browse(desk.At("a.svg"));
        dom.Should().Contain("data-device=\"M1\"");
        log.Should().NotContain("CONSOLE");
    }

    private IEnumerable<string> Tones(string file) =>
        XDocument.Load(desk.At(file)).Descendants().Attributes("data-tone").Select(a => a.Value).Distinct();

    private string? ToneOf(string file, string terminal) =>
        XDocument
            .Load(desk.At(file))
            .Descendants()
            .Where(g => g.Attribute("data-kind")?.Value == "wire")
            .FirstOrDefault(g =>
                g.Attribute("data-terminals")
                    ?.Value.Split(' ')
                    .Any(t => t.StartsWith(terminal, StringComparison.Ordinal))
                ?? false
            )
            ?.Attribute("data-tone")
            ?.Value;
}
