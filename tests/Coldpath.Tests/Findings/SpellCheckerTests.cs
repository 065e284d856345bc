using Coldpath.Findings;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Findings;

public class SpellCheckerTests
{
    private static readonly string[] Words = ["contactor", "conductor", "stops", "when", "by", "K1", "K2"];

    [Theory]
    [InlineData("contacter", "contactor")]
    [InlineData("cnotactor", "contactor")]
    [InlineData("CONTACTOR", "contactor")]
    [InlineData("stop", "stops")]
    [InlineData("whn", "when")]
    [InlineData("bye", "by")]
    [InlineData("K3", "K1")]
    public void Names_what_is_near(string word, string near) =>
        SpellChecker.Nearest(word, Words).Should().Be(near);

    [Theory]
    [InlineData("motor")]
    [InlineData("contactor")]
    [InlineData("wire")]
    [InlineData("")]
    public void Is_silent_about_what_is_far_or_right(string word) =>
        SpellChecker.Nearest(word, Words.Where(w => w != "conductor")).Should().BeNull();

    [Theory]
    [InlineData("abcd", "abcd", 0)]
    [InlineData("abcd", "abdc", 1)]
    [InlineData("abcd", "bcd", 1)]
    [InlineData("abcd", "abxcd", 1)]
    [InlineData("abcd", "efgh", 4)]
    [InlineData("", "ab", 2)]
    public void Counts_letters_to_change(string a, string b, int distance) =>
        SpellChecker.Distance(a, b, 10).Should().Be(distance);
}
