using Coldpath.Findings;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Sarif;
using Coldpath.Sheets.Reports.Text;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Sheets;

/// <summary>Whatever stands in a file and wherever a finding points, it can be written.</summary>
public class AnySpanTests
{
    private static readonly Gen<string> AnyText = Gen.OneOf(
        Gen.String[Gen.Char, 0, 300],
        Gen.String[Gen.Char["a\t\r\né\u0301\u202e\ud83d\udd0c日"], 0, 300]
    );

    private static readonly Gen<Finding> AnyFinding = Gen.Select(
            AnyText,
            Gen.Int[0, 300],
            Gen.Int[0, 300],
            AnyText
        )
        .Select(
            (text, a, b, words) =>
            {
                var source = new SourceText("a b#%.panel", text);
                var start = Math.Min(Math.Min(a, b), text.Length);
                var span = new Span(source, start, Math.Clamp(Math.Max(a, b), start, text.Length));
                return Specimens.Short with
                {
                    Message = words,
                    Location = span,
                    Related = [new Label(span, words)],
                    Story = [new StoryStep(words)],
                    Path = [words],
                };
            }
        );

    [Fact]
    public void As_text_without_anything_that_moves_the_cursor() =>
        AnyFinding.Sample(finding =>
        {
            var page = new Page();
            FindingText.Write(page, finding);
            var text = page.ToString();
            text.Any(c => (char.IsControl(c) && c != '\n') || c is >= '\u202A' and <= '\u202E')
                .Should()
                .BeFalse();
        });

    [Fact]
    public void As_json_and_sarif_that_fit_their_schemas() =>
        AnyFinding.Sample(
            finding =>
            {
                var report = Specimens.Report with { Source = finding.Location.Source, Findings = [finding] };
                Schemas.ShouldFit(CheckJson.Of(report), "check.schema.json");
                Schemas.ShouldFit(SarifLog.Of([report], [Specimens.Card], "0.1.0"), "sarif-2.1.0.json");
            },
            iter: 30
        );
}
