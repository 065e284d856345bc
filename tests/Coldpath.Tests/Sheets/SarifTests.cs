using System.Text.Json.Nodes;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Sarif;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Sheets;

public class SarifTests
{
    private static readonly string Text = SarifLog.Of(
        [Specimens.Report, Specimens.Bounded],
        [Specimens.Card, Specimens.Card with { Code = "S040", Name = "coil-voltage-mismatch" }],
        "0.1.0"
    );

    private static JsonNode Run => JsonNode.Parse(Text)!["runs"]![0]!;

    [Fact]
    public void A_log_fits_the_published_schema()
    {
        Schemas.ShouldFit(Text, "sarif-2.1.0.json");
        Schemas.ShouldFit(SarifLog.Of([], [], "0.1.0"), "sarif-2.1.0.json");
    }

    [Theory]
    [InlineData("version")]
    [InlineData("runs")]
    public void A_log_without_a_key_does_not_fit(string key)
    {
        var log = JsonNode.Parse(Text)!.AsObject();
        log.Remove(key);
        Schemas.Fits(log, "sarif-2.1.0.json").Should().BeFalse();
    }

    [Fact]
    public void A_log_with_a_wrong_level_does_not_fit()
    {
        var log = JsonNode.Parse(Text)!;
        log["runs"]![0]!["results"]![0]!["level"] = "danger";
        Schemas.Fits(log, "sarif-2.1.0.json").Should().BeFalse();
    }

    [Fact]
    public void Rules_come_from_the_cards_and_from_findings_without_one()
    {
        var rules = Run["tool"]!["driver"]!["rules"]!.AsArray();
        rules.Select(r => r!["id"]!.GetValue<string>()).Should().Equal("S012", "S031", "S040");
        rules[0]!["fullDescription"]!["text"]!.GetValue<string>().Should().StartWith("While both conduct");
    }

    [Fact]
    public void A_result_has_its_region_related_places_and_flows()
    {
        var result = Run["results"]![0]!;
        result["ruleIndex"]!.GetValue<int>().Should().Be(0);
        var place = result["locations"]![0]!["physicalLocation"]!;
        place["artifactLocation"]!["uri"]!.GetValue<string>().Should().Be("panels/line%202/pump.panel");
        place["region"]!
            .ToJsonString()
            .Should()
            .Be("""{"startLine":5,"startColumn":19,"endLine":5,"endColumn":21}""");
        result["relatedLocations"]!.AsArray().Should().HaveCount(1);
        result["codeFlows"]!.AsArray().Should().HaveCount(2);
        result["suppressions"]!.AsArray().Should().BeEmpty();
    }

    [Fact]
    public void A_waiver_is_a_suppression_with_its_reason() =>
        Run["results"]![1]!["suppressions"]![0]!["justification"]!
            .GetValue<string>()
            .Should()
            .Be("cord and plug: \"seen\"");

    [Fact]
    public void An_incomplete_search_is_no_success()
    {
        Run["invocations"]![0]!["executionSuccessful"]!.GetValue<bool>().Should().BeFalse();
        Run["invocations"]![0]!["toolExecutionNotifications"]!.AsArray().Should().HaveCount(2);
    }

    [Fact]
    public void Every_severity_has_a_level_of_the_standard()
    {
        var findings = Enum.GetValues<Severity>()
            .Select(s => Specimens.Short with { Severity = s })
            .ToArray();
        var log = SarifLog.Of([Specimens.Report with { Findings = findings }], [Specimens.Card], "0.1.0");
        Schemas.ShouldFit(log, "sarif-2.1.0.json");
        JsonNode.Parse(log)!["runs"]![0]!["results"]!
            .AsArray()
            .Select(r => r!["level"]!.GetValue<string>())
            .Should()
            .Equal("note", "warning", "error", "error");
    }
}
