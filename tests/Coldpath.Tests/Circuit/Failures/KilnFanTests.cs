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
    private static readonly string Text = Described.Text("kiln-fan.panel");

    private static readonly string Bridged = Text.Replace(", feedback loop", "", StringComparison.Ordinal)
        .Replace("rung 5", "# rung 5", StringComparison.Ordinal);

    private static readonly Lazy<IReadOnlyList<FailureTold>> Told = new(() => Failures(Text));

    [Theory]
    [InlineData("K1.jams")]
    [InlineData("K2.weld1")]
    public void A_contactor_that_stays_in_is_seen_at_the_next_reset(string name) =>
        Told.Value.Single(f => f.Variable == name).Shows.Should().Contain("K9 stays out");

    [Fact]
    public void Without_the_feedback_loop_nothing_shows_it() =>
        Failures(Bridged).Single(f => f.Variable == "K1.jams").Disclosure.Should().Be(Disclosure.Hidden);

    /// <summary>What is claimed is that S0 stops it; of S1 nobody has said so.</summary>
    [Fact]
    public void The_check_finds_nothing_hidden_and_claims_only_what_is_claimed()
    {
        var findings = Workbench.Check(Source(Text), CancellationToken.None).Findings;
        findings.Should().NotContain(f => f.Name == "hidden-failure");
        findings.Should().NotContain(f => f.Message.Contains("is meant to stop", StringComparison.Ordinal));
        findings
            .Where(f => f.Name is "single-failure-starts-motor" or "single-failure-defeats-stop")
            .Should()
            .OnlyContain(f => f.Severity == Severity.Note)
            .And.Contain(f => f.Message.StartsWith("S1 does not stop M1", StringComparison.Ordinal))
            .And.Contain(f => f.Story.Any(step => step.Text == "K9 pulls in"))
            .And.OnlyContain(f => f.Story.All(step => step.Text != "K9: reopened no"))
            .And.Contain(f => f.Message.StartsWith("M1 starts again", StringComparison.Ordinal));
    }

    [Fact]
    public void Whatever_shows_itself_says_how_and_never_by_what_was_done()
    {
        foreach (var failure in Told.Value)
            failure.Shows.Any().Should().Be(failure.Disclosure == Disclosure.Revealed, failure.Variable);
        Told.Value.SelectMany(f => f.Shows).Should().NotContain(s => s.StartsWith('S') || s.StartsWith('Q'));
    }

    /// <summary>A lamp burns through a sound diode and past a shorted one.</summary>
    [Fact]
    public void A_shorted_diode_of_a_lamp_test_is_not_seen() =>
        Told.Value.Single(f => f.Variable == "V1.shorted").Disclosure.Should().Be(Disclosure.Hidden);

    [Fact]
    public void A_lamp_behind_a_diode_carries_current_though_not_straight_from_a_supply() =>
        Workbench
            .Live(Source(Text), [new("S4", "pressed")], fromRest: false, [], CancellationToken.None)
            .Answer!.Loads.Single(l => l.Key == "P1")
            .Value.Should()
            .Be("carries current, though not straight from a supply");

    [Fact]
    public void A_fuse_that_blows_is_the_sign_of_an_earth_fault() =>
        Told.Value.Single(f => f.Variable == "P.touches earth").Shows.Should().Equal("F4 comes to blown");

    private static IReadOnlyList<FailureTold> Failures(string text) =>
        Workbench.Failures(Source(text), null, 1, CancellationToken.None).Answer!.Failures;

    private static SourceText Source(string text) => new("kiln-fan.panel", text);
}
