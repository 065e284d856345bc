using System.Text.Json.Nodes;
using Coldpath.Cli;
using Coldpath.Inspection;
using Coldpath.Tests.Sheets;
using FluentAssertions;

namespace Coldpath.Tests.Cli;

/// <summary>Every command on a real panel, from arguments to output.</summary>
public sealed class EndToEndTests : IDisposable
{
    private readonly Desk desk = new Desk().With("fan.panel", BasePanels.Text("direct-on-line"));

    public void Dispose() => desk.Dispose();

    [Fact]
    public void Check_writes_json_that_fits()
    {
        var ran = desk.Run("check", "fan.panel", "--failures", "0", "--format", "json");
        Schemas.ShouldFit(ran.Out, "check.schema.json");
        var report = JsonNode.Parse(ran.Out)!;
        report["panel"]!.GetValue<string>().Should().Be("Fan 1");
        report["states"]!.GetValue<long>().Should().BeGreaterThan(1);
        report["findings"]!.AsArray().Should().BeEmpty();
    }

    [Fact]
    public void Check_writes_sarif_that_fits_with_names_from_the_repository()
    {
        Directory.CreateDirectory(desk.At(".git"));
        desk.With("site/pump.panel", Broken);
        var ran = Ran.In(desk.At("site"), ["check", "pump.panel", "--format", "sarif"]);
        ran.Exit.Should().Be(Exit.Unusable);
        Schemas.ShouldFit(ran.Out, "sarif-2.1.0.json");
        ran.Out.Should().Contain("\"uri\": \"site/pump.panel\"").And.NotContain(desk.Path);
    }

    [Fact]
    public void Help_is_narrow_enough_to_read() =>
        desk.Run("--help").Out.Split('\n').Should().OnlyContain(line => line.Length < 200);

    [Fact]
    public void Isolating_a_place_that_holds_the_line_side_lists_all_that_stays_live_there()
    {
        var ran = desk.Run("isolate", "fan.panel", "incoming", "--format", "json");
        ran.Exit.Should().Be(Exit.Findings);
        var answer = JsonNode.Parse(ran.Out)!;
        answer["sets"]!.AsArray().Should().BeEmpty();
        var stays = answer["staysLive"]!.AsArray().Select(p => p!["point"]!.GetValue<string>());
        stays.Should().BeEquivalentTo("Q0:1/L1", "Q0:3/L2", "Q0:5/L3");
    }

    [Fact]
    public void A_set_that_is_not_enough_has_no_conditions_to_be_dead()
    {
        var ran = desk.Run("isolate", "fan.panel", "M1", "--have", "Q1", "--format", "json");
        JsonNode.Parse(ran.Out)!["have"]!["enough"]!.GetValue<string>().Should().Be("no");
        JsonNode.Parse(ran.Out)!["wholeOnly"]!.AsArray().Should().BeEmpty();
    }

    [Fact]
    public void A_header_that_is_not_understood_is_one_finding()
    {
        desk.With(
            "slip.panel",
            BasePanels
                .Text("direct-on-line")
                .Replace("solidly earthed wye", "solidly earthd wye", StringComparison.Ordinal)
        );
        var ran = desk.Run("check", "slip.panel", "--format", "json");
        var findings = JsonNode.Parse(ran.Out)!["findings"]!.AsArray();
        findings.Select(f => f!["name"]!.GetValue<string>()).Should().Equal("header-unclear");
    }

    [Fact]
    public void A_misspelt_statement_is_told_from_a_kind()
    {
        desk.With(
            "slip.panel",
            BasePanels
                .Text("direct-on-line")
                .Replace("stops M1 by S1", "stop M1 by S1", StringComparison.Ordinal)
        );
        desk.Run("check", "slip.panel").Out.Should().Contain("did you mean stops?");
    }

    [Fact]
    public void Check_of_a_directory_reports_each_panel_and_the_total()
    {
        desk.With("more/b.panel", BasePanels.Text("reversing"))
            .With("more/a.panel", BasePanels.Text("direct-on-line"));
        var ran = desk.Run("check", "more");
        ran.Out.Should().EndWith("\n").And.Contain("2 panels: ");
        var both = JsonNode.Parse(desk.Run("check", "more", "--format", "json").Out)!["panels"]!.AsArray();
        both.Select(p => p!["file"]!.GetValue<string>()).Should().Equal("more/a.panel", "more/b.panel");
    }

    [Fact]
    public void Check_reads_the_standard_input()
    {
        var ran = Ran.In(desk.Path, ["check", "-"], BasePanels.Text("two-contactors"));
        ran.Out.Should().Contain("Press feed roller: no findings");
        ran.Error.Should().BeEmpty();
    }

    [Fact]
    public void Check_writes_into_a_file_what_it_would_print()
    {
        var printed = desk.Run("check", "fan.panel");
        var saved = desk.Run("check", "fan.panel", "-o", "report.txt");
        saved.Out.Should().BeEmpty();
        saved.Exit.Should().Be(printed.Exit);
        desk.Read("report.txt").Should().Be(printed.Out);
    }

    [Fact]
    public void Check_names_place_and_word_of_a_mistake()
    {
        var ran = desk.With("broken.panel", Broken).Run("check", "broken.panel");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Out.Should()
            .Contain("broken.panel:9:1")
            .And.Contain("contcator")
            .And.Contain("contactor")
            .And.Contain("^^^^^^^^^");
        ran.Out.Should().Contain("not checked");
    }

    [Fact]
    public void Colour_is_for_terminals_that_want_it()
    {
        string[] check = ["check", "broken.panel"];
        desk.With("broken.panel", Broken);
        Ran.In(desk.Path, check, terminal: true).Out.Should().Contain("\u001b[");
        Ran.In(desk.Path, check, terminal: false).Out.Should().NotContain("\u001b");
        foreach (var (name, value) in new[] { ("NO_COLOR", "1"), ("TERM", "dumb") })
        {
            var environment = new Dictionary<string, string> { [name] = value };
            Ran.In(desk.Path, check, terminal: true, environment: environment)
                .Out.Should()
                .NotContain("\u001b");
        }
    }

    [Fact]
    public void Live_answers_in_json_that_fits()
    {
        var ran = desk.Run("live", "fan.panel", "--set", "S2=pressed", "--format", "json");
        Schemas.ShouldFit(ran.Out, "live.schema.json");
        var answer = JsonNode.Parse(ran.Out)!;
        answer["state"]!["Q1"]!.GetValue<string>().Should().Be("in");
        answer["points"]!["Q1:2/T1"]!["reach"]!.GetValue<string>().Should().Be("solid");
        answer["points"]!["Q1:2/T1"]!["from"]!
            .AsArray()
            .Select(f => f!.GetValue<string>())
            .Should()
            .Contain("MAINS");
    }

    [Fact]
    public void Live_from_rest_leaves_the_isolators_open()
    {
        var answer = JsonNode.Parse(desk.Run("live", "fan.panel", "--from", "rest", "--format", "json").Out)!;
        answer["state"]!["Q0"]!.GetValue<string>().Should().Be("open");
        answer["points"]!["Q0:1/L1"]!["reach"]!.GetValue<string>().Should().Be("solid");
        answer["points"]!["Q1:1/L1"]!["reach"]!.GetValue<string>().Should().Be("dead");
    }

    [Theory]
    [InlineData("live", "fan.panel", "--set", "S9=pressed")]
    [InlineData("live", "fan.panel", "--set", "S2=upside-down")]
    [InlineData("why", "fan.panel", "M9:U")]
    [InlineData("isolate", "fan.panel", "M9")]
    [InlineData("isolate", "fan.panel", "M1", "--have", "Q9")]
    public void A_question_about_nothing_is_2(params string[] arguments)
    {
        var ran = desk.Run(arguments);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Out.Should().BeEmpty();
        ran.Error.Should().StartWith("coldpath: ");
    }

    [Fact]
    public void Why_answers_in_json_that_fits()
    {
        var ran = desk.Run("why", "fan.panel", "M1:U", "--format", "json");
        Schemas.ShouldFit(ran.Out, "why.schema.json");
        JsonNode.Parse(ran.Out)!["story"]!.AsArray().Should().NotBeEmpty();
    }

    [Fact]
    public void Isolate_answers_in_json_that_fits()
    {
        var ran = desk.Run("isolate", "fan.panel", "M1", "--have", "Q1", "--format", "json");
        Schemas.ShouldFit(ran.Out, "isolate.schema.json");
        var answer = JsonNode.Parse(ran.Out)!;
        answer["sets"]![0]!["devices"]!.AsArray().Select(d => d!.GetValue<string>()).Should().Equal("Q0");
        answer["have"]!["enough"]!.GetValue<string>().Should().NotBe("yes");
        ran.Exit.Should().NotBe(Exit.Clean);
    }

    [Fact]
    public void The_exported_netlist_fits_its_schema() =>
        Schemas.ShouldFit(desk.Run("export", "netlist", "fan.panel").Out, "netlist.schema.json");

    [Fact]
    public void Fmt_changes_a_file_once()
    {
        desk.With(
            "fan.panel",
            BasePanels.Text("direct-on-line").Replace("->", "   ->", StringComparison.Ordinal)
        );
        desk.Run("fmt", "--check", "fan.panel").Should().Be(new Ran(Exit.Findings, "fan.panel\n", ""));
        desk.Run("fmt", "fan.panel").Should().Be(new Ran(Exit.Clean, "", ""));
        desk.Run("fmt", "--check", "fan.panel").Should().Be(new Ran(Exit.Clean, "", ""));
        desk.Read("fan.panel").Should().NotContain("   ->");
        Ran.In(desk.Path, ["fmt", "-"], desk.Read("fan.panel")).Out.Should().Be(desk.Read("fan.panel"));
    }

    [Fact]
    public void Fmt_leaves_alone_what_it_cannot_read()
    {
        const string unread = "panel \"A\"\n->->->\n";
        var ran = desk.With("unread.panel", unread).Run("fmt", "unread.panel");
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("unread.panel:2:1");
        desk.Read("unread.panel").Should().Be(unread);
    }

    [Fact]
    public void Kinds_are_listed_and_printed_as_they_are_written()
    {
        desk.Run("kinds").Out.Should().ContainAll("contactor", "soft starter", "motor");
        desk.Run("kinds", "soft", "starter").Out.Should().Contain("kind soft starter").And.EndWith("end\n");
    }

    [Fact]
    public void Explain_lists_the_checks_and_finds_one_by_code_or_name()
    {
        var card = Workbench.Cards[0];
        desk.Run("explain").Out.Should().ContainAll(Workbench.Cards.Select(c => c.Name));
        desk.Run("explain", card.Code.ToLowerInvariant()).Out.Should().Be(desk.Run("explain", card.Name).Out);
        desk.Run("explain", card.Name).Out.Should().Contain(card.Why);
    }

    private static string Broken =>
        BasePanels.Text("direct-on-line").Replace("\ncontactor  ", "\ncontcator  ", StringComparison.Ordinal);
}
