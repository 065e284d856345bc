using Coldpath.Findings;
using Coldpath.Notation;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

public class LanguagePageTests
{
    public static TheoryData<Sample> Blocks => new(Samples.LanguagePage);

    [Fact]
    public void The_language_page_has_its_examples() => Samples.LanguagePage.Should().HaveCountGreaterThan(8);

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_example_is_read(Sample sample) =>
        PanelParser.Parse(new SourceText(sample.Name, sample.Text)).Findings.Should().BeEmpty();

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_example_is_in_canonical_layout(Sample sample) =>
        Read.Format(sample.Text).Should().Be(sample.Text);
}
