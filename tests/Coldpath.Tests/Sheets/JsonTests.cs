using System.Text.Json.Nodes;
using Coldpath.Answers;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Sheets;

public class JsonTests
{
    [Fact]
    public void Reports_fit_their_schema()
    {
        Schemas.ShouldFit(CheckJson.Of(Specimens.Report), "check.schema.json");
        Schemas.ShouldFit(CheckJson.Of(Specimens.Bounded), "check.schema.json");
        Schemas.ShouldFit(CheckJson.Of([Specimens.Report, Specimens.Bounded]), "check.schema.json");
        Schemas.ShouldFit(CheckJson.Of(Array.Empty<CheckReport>()), "check.schema.json");
        Schemas.ShouldFit(
            CheckJson.Of(Specimens.Report with { States = null, Readable = false }),
            "check.schema.json"
        );
    }

    [Fact]
    public void Answers_fit_their_schemas()
    {
        Schemas.ShouldFit(LiveJson.Of(Specimens.Live), "live.schema.json");
        Schemas.ShouldFit(WhyJson.Of(Specimens.Why), "why.schema.json");
        Schemas.ShouldFit(
            WhyJson.Of(Specimens.Why with { CanBeLive = Verdict.No, Reach = null, Proof = "It is proved." }),
            "why.schema.json"
        );
        Schemas.ShouldFit(IsolateJson.Of(Specimens.Isolate), "isolate.schema.json");
        Schemas.ShouldFit(
            IsolateJson.Of(
                Specimens.Isolate with
                {
                    Count = 0,
                    Sets = [],
                    Have = null,
                    Stays = Specimens.Backfed,
                }
            ),
            "isolate.schema.json"
        );
    }

    [Theory]
    [InlineData("findings")]
    [InlineData("complete")]
    [InlineData("notChecked")]
    public void A_report_without_a_key_does_not_fit(string key)
    {
        var report = JsonNode.Parse(CheckJson.Of(Specimens.Report))!.AsObject();
        report.Remove(key);
        Schemas.Fits(report, "check.schema.json").Should().BeFalse();
    }

    [Fact]
    public void A_report_says_all_that_it_knows()
    {
        var report = JsonNode.Parse(CheckJson.Of(Specimens.Report))!;
        report["schema"]!.GetValue<int>().Should().Be(1);
        report["states"]!.ToJsonString().Should().Be("1000000000000000000000007");
        var finding = report["findings"]![0]!;
        finding["severity"]!.GetValue<string>().Should().Be("danger");
        finding["location"]!
            .ToJsonString()
            .Should()
            .Be(
                """{"file":"panels/line 2/pump.panel","start":{"line":5,"column":19},"end":{"line":5,"column":21}}"""
            );
        finding["story"]![1]!["text"]!.GetValue<string>().Should().Be("K3 pulls in");
        finding["path"]!.AsArray().Should().HaveCount(6);
        report["findings"]![1]!["waived"]!.GetValue<string>().Should().Be("cord and plug: \"seen\"");
        report["notChecked"]![0]!["check"]!.GetValue<string>().Should().Be("coil-voltage-mismatch");
    }

    [Fact]
    public void An_isolation_count_keeps_its_digits() =>
        JsonNode.Parse(IsolateJson.Of(Specimens.Isolate))!["count"]!.ToJsonString().Should().Be("592912");

    [Fact]
    public void Points_of_a_live_answer_are_keyed_by_name()
    {
        var points = JsonNode.Parse(LiveJson.Of(Specimens.Live))!["points"]!;
        points["T1:H1"]!["reach"]!.GetValue<string>().Should().Be("backfeed");
        points["T1:H1"]!["from"]![0]!.GetValue<string>().Should().Be("UPS");
        points["M1:U"]!["reach"]!.GetValue<string>().Should().Be("dead");
    }

    [Fact]
    public void Lines_end_in_line_feeds_alone()
    {
        var text = CheckJson.Of(Specimens.Report);
        text.Should().NotContain("\r").And.EndWith("}\n");
    }
}
