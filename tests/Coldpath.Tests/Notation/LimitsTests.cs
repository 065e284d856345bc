using Coldpath.Notation;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

/// <summary>Each limit, from both sides.</summary>
public class LimitsTests
{
    [Fact]
    public void A_file_of_4_MB_is_read_and_a_larger_one_is_not()
    {
        var row = "# " + new string('x', 1021) + "\n";
        var text = string.Concat(Enumerable.Repeat(row, Limits.FileBytes / row.Length));
        Read.Codes(text).Should().BeEmpty();
        Read.Codes(text + "\n").Should().Equal("X020");
    }

    [Theory]
    [InlineData(200, 0)]
    [InlineData(201, 1)]
    [InlineData(100_000, 1)]
    public void Brackets_nest_200_deep(int depth, int findings)
    {
        var text = $"A -> {Repeat("( ", depth)}B{Repeat(" )", depth)}\n";
        Read.Codes(text).Should().HaveCount(findings);
        Read.Codes($"never {Repeat("(", depth)}K1 closed{Repeat(")", depth)}\n").Should().HaveCount(findings);
        Read.Codes($"kind k\nlet x = {Repeat("(", depth)}1{Repeat(")", depth)}\nend\n")
            .Should()
            .HaveCount(findings);
    }

    [Theory]
    [InlineData(200, 0)]
    [InlineData(201, 1)]
    [InlineData(20_000, 1)]
    public void Blocks_nest_200_deep(int depth, int findings) =>
        Read.Codes($"kind k\n{Repeat("if a\n", depth)}{Repeat("end\n", depth)}end\n")
            .Should()
            .HaveCount(findings);

    [Theory]
    [InlineData(200, 0)]
    [InlineData(201, 1)]
    public void A_name_has_200_characters(int length, int findings)
    {
        var name = new string('K', length);
        Read.Codes($"contactor {name} 1 A").Should().HaveCount(findings);
        Read.Codes($"K1:{name[1..]} -> K2").Should().HaveCount(findings);
        Read.Codes($"lamp P1 {new string('9', length)} A").Should().HaveCount(findings);
    }

    [Theory]
    [InlineData(4_999, 0)]
    [InlineData(5_001, 1)]
    public void A_line_has_10_000_words_and_signs(int steps, int findings) =>
        Read.Codes(Repeat("A -> ", steps) + "B").Should().HaveCount(findings);

    [Theory]
    [InlineData(999)]
    [InlineData(1_000)]
    [InlineData(5_000)]
    public void A_thousand_findings_are_kept_and_the_last_says_so(int mistakes)
    {
        var findings = Read.All(Repeat("contactor\n", mistakes)).Findings;
        findings.Should().HaveCount(Math.Min(mistakes, Limits.Findings));
        (findings[^1].Code == "X024").Should().Be(mistakes >= Limits.Findings);
    }

    private static string Repeat(string text, int count) => string.Concat(Enumerable.Repeat(text, count));
}
