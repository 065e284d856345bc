using Coldpath.Answers;
using Coldpath.Findings;
using Coldpath.Sheets.Reports.Text;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Sheets;

public class TextTests
{
    [Fact]
    public void A_report_reads_from_message_to_help_and_ends_with_the_summary() =>
        CheckText
            .Of(Specimens.Report)
            .ToString()
            .Should()
            .Be(
                """
                danger[S012 short-in-change-over]: K2 and K3 short L1 and L3 while both conduct
                  panels/line 2/pump.panel:5:19
                     |
                   5 | contactor  K2 and K3 140 A AC-3, coil 120 V
                     |                   ^^
                     |
                   6 | MAINS -> Q1 -> ( K2 | K3 -> M1[W, V, U] )
                     |                             ----------- crosses the phases
                  story:
                    1. operate Q1
                    2. K3 pulls in
                    3. L1 and L3 are joined
                  path: MAINS:L1 -> Q1 -> K3 -> K2 -> Q1 -> MAINS:L3
                  reference: common practice
                  help: put NC K2 ahead of coil K3

                waived
                  panels/line 2/pump.panel:4:12: nothing isolates Q1:2 [S031 section-without-isolator]
                    because "cord and plug: "seen""

                Pump 2: 1 danger (1 waived)
                  covered: 1,000,000,000,000,000,000,000,007 states, all that the panel can reach
                  failures: none reckoned with
                  checks made: 2, not made: 1
                    coil-voltage-mismatch: T1 gives no secondary voltage
                  proved: 1 intent
                    never K2 and K3 closed, when settled
                  assumed:
                    S1 rests at OFF

                """
            );

    [Fact]
    public void A_bounded_search_never_reads_as_complete()
    {
        var text = CheckText.Of(Specimens.Bounded).ToString();
        text.Should().Contain("NOT COMPLETE").And.Contain("stopped after 4,096 states");
        text.Should().NotContain("all that the panel can reach");
    }

    [Fact]
    public void A_total_counts_open_findings_and_incomplete_panels() =>
        CheckText
            .Total([Specimens.Report, Specimens.Bounded])
            .ToString()
            .Should()
            .Be("2 panels: 1 danger (1 waived); 1 not complete\n");

    [Fact]
    public void A_live_answer_speaks_the_panels_rule_set()
    {
        var american = LiveText.Of(Specimens.Live).ToString();
        american.Should().Contain("ENERGIZED").And.Contain("de-energized in this state");
        var european = LiveText.Of(Specimens.Live with { Rules = "IEC" }).ToString();
        european.Should().Contain("LIVE").And.Contain("dead in this state").And.NotContain("nergized");
    }

    [Fact]
    public void A_point_that_is_not_decided_is_never_among_the_dead()
    {
        var answer = Specimens.Live with
        {
            Rules = "IEC",
            Complete = false,
            Incomplete = ["K7 may pull in at 60 V"],
            Points = [Specimens.Dead with { Reach = Reach.Unknown }],
        };
        var text = LiveText.Of(answer).ToString();
        text.Should()
            .Contain("NOT COMPLETE")
            .And.Contain("TAKE AS LIVE")
            .And.NotContain("dead in this state");
    }

    [Fact]
    public void An_undecided_question_is_not_answered_with_no()
    {
        var text = WhyText.Of(Specimens.Why with { CanBeLive = Verdict.Open, Reach = null }).ToString();
        text.Should().Contain("not decided").And.NotContain("nothing can");
    }

    [Fact]
    public void An_isolation_answer_lists_sets_verdict_and_what_stays()
    {
        var text = IsolateText.Of(Specimens.Isolate).ToString();
        text.Should().Contain("592,912 minimal sets; the best 2:");
        text.Should().Contain("NOT lockable, no visible break: rely on the test, second rank");
        text.Should().Contain("with Q3: NOT enough").And.Contain("when K3 welded");
        text.Should().Contain("may stay energized in the same place");
        text.Should().Contain("XD1 to PE: else M1:U energized; measure M1:U to PE");
    }

    [Fact]
    public void A_live_answer_gives_the_positions() =>
        LiveText.Of(Specimens.Live).ToString().Should().Contain("settled: steady\n  Q1 closed, S1 HAND\n");

    [Fact]
    public void Points_of_one_device_that_are_alike_share_a_row()
    {
        var lines = LiveText.Of(Specimens.Live).ToString().Split('\n');
        lines
            .Should()
            .ContainSingle(line => line.StartsWith("  starter  T1", StringComparison.Ordinal))
            .Which.Should()
            .EndWith("  H1 H4");
        lines.Should().Contain(line => line.EndsWith("  102", StringComparison.Ordinal));
    }

    [Fact]
    public void Long_lists_are_broken_into_lines()
    {
        var lines = new Page()
            .Flow([.. Enumerable.Range(1, 9).Select(i => $"X1:{i}")], 20)
            .ToString()
            .Split('\n');
        lines.Should().Equal("  X1:1, X1:2, X1:3,", "  X1:4, X1:5, X1:6,", "  X1:7, X1:8, X1:9", "");
    }

    [Fact]
    public void Every_answer_ends_with_the_cautions()
    {
        foreach (
            var page in new[]
            {
                LiveText.Of(Specimens.Live),
                WhyText.Of(Specimens.Why),
                IsolateText.Of(Specimens.Isolate),
            }
        )
            page.ToString().Should().EndWith("The description may not match the panel.\n");
    }

    [Fact]
    public void No_target_without_a_set_is_called_isolated()
    {
        var answer = Specimens.Isolate with { Count = 0, Sets = [], Stays = Specimens.Backfed, Have = null };
        IsolateText.Of(answer).ToString().Should().Contain("no set of disconnects makes it de-energized");
    }

    [Fact]
    public void Text_from_a_description_cannot_draw_on_the_terminal()
    {
        var finding = Specimens.Short with { Message = "tag \u001b[31mX\u202e\r is unknown" };
        var page = new Page();
        FindingText.Write(page, finding);
        page.ToString()
            .Should()
            .NotContainAny("\u001b", "\u202e", "\r")
            .And.Contain("tag \uFFFD[31mX\uFFFD\uFFFD is");
    }

    [Theory]
    [InlineData("\tK1 x", "K1", "     |     ^^")]
    [InlineData("日本 K1", "K1", "     |      ^^")]
    [InlineData("e\u0301 K1", "K1", "     |   ^^")]
    [InlineData("K1", "", "     | ^")]
    public void The_mark_stands_under_its_span(string line, string marked, string expected)
    {
        var source = new SourceText("a.panel", line);
        var start = line.IndexOf(marked, StringComparison.Ordinal);
        var page = new Page();
        FindingText.Write(
            page,
            Specimens.Short with
            {
                Location = new Span(source, start, start + marked.Length),
                Related = [],
                Story = [],
                Path = [],
            }
        );
        page.ToString().Split('\n')[4].Should().Be(expected);
    }

    [Fact]
    public void A_span_over_several_lines_is_marked_on_its_first()
    {
        var span = Specimens.At("K2 and K3").Through(Specimens.At("M1["));
        var page = new Page();
        FindingText.Write(page, Specimens.Short with { Location = span, Related = [] });
        page.ToString().Should().Contain("^^^ to line 6");
    }

    [Fact]
    public void A_line_without_end_is_cut_around_its_span()
    {
        var source = new SourceText("a.panel", new string('x', 100_000) + "K1" + new string('y', 100_000));
        var page = new Page();
        FindingText.Write(
            page,
            Specimens.Short with
            {
                Location = new Span(source, 100_000, 100_002),
                Related = [],
            }
        );
        page.ToString().Length.Should().BeLessThan(1000);
        page.ToString().Should().Contain("xK1y");
    }
}
