using Coldpath.Answers;
using Coldpath.Circuit.Failures;
using Coldpath.Findings;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>
/// Two contactors behind a safety relay. With the feedback loop the relay refuses the reset after one has jammed, and its
/// indicator tells so; with the loop bridged nothing does.
/// </summary>
public sealed class KilnFanTests
{
    private static readonly string Text = File.ReadAllText(
        Path.Combine(RepositoryRoot.Path, "tests/Coldpath.Tests/Circuit/Failures/kiln-fan.panel")
    );

    private static readonly string Bridged = Text.Replace(", feedback loop", "", StringComparison.Ordinal)
        .Replace("rung 5", "# rung 5", StringComparison.Ordinal);

    private static readonly Lazy<IReadOnlyList<FailureTold>> Told = new(() => Failures(Text));

    [Theory]
    [InlineData("K1.jams")]
    [InlineData("K2.weld1")]
    public void A_contactor_that_stays_in_is_seen_at_the_next_reset(string name) =>
        Told.Value.Single(f => f.Variable == name).Shows.Should().Contain("K9 stays out");

    [Fact]
    public void Without_the_feedback_loop_nothing_shows_it()
    {
        Failures(Bridged).Single(f => f.Variable == "K1.jams").Disclosure.Should().Be(Disclosure.Hidden);
        Messages(Bridged)
            .Should()
            .Contain(m => m.StartsWith("no single operation shows that K1 jams", StringComparison.Ordinal));
    }

    [Fact]
    public void With_it_no_failure_that_lets_the_next_one_through_is_hidden() =>
        Messages(Text).Should().NotContain(m => m.Contains("shows that", StringComparison.Ordinal));

    [Fact]
    public void Whatever_shows_itself_says_how_and_never_by_what_was_done()
    {
        foreach (var failure in Told.Value)
            failure.Shows.Any().Should().Be(failure.Disclosure == Disclosure.Revealed, failure.Variable);
        Told.Value.SelectMany(f => f.Shows).Should().NotContain(s => s.StartsWith('S') || s.StartsWith('Q'));
    }

    [Fact]
    public void A_fuse_that_blows_is_the_sign_of_an_earth_fault() =>
        Told.Value.Single(f => f.Variable == "P.touches earth").Shows.Should().Equal("F4 comes to blown");

    private static IReadOnlyList<FailureTold> Failures(string text) =>
        Workbench.Failures(Source(text), null, 1, CancellationToken.None).Answer!.Failures;

    private static IEnumerable<string> Messages(string text) =>
        Workbench.Check(Source(text), CancellationToken.None).Findings.Select(f => f.Message);

    private static SourceText Source(string text) => new("kiln-fan.panel", text);
}
