using System.Text.Json.Nodes;
using Coldpath.Cli;
using Coldpath.Tests.Sheets;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

/// <summary>Failures from the command line, and that their stories can be played.</summary>
public sealed class FailuresTests
{
    private static readonly string Panels = Path.Combine(RepositoryRoot.Path, "panels");

    public static TheoryData<string, string> Hazards =>
        new()
        {
            { "orchard-well-pump.panel", "M1 runs and S1 at OFF, when quiet" },
            { "lock-gate-winch.panel", "M1 runs and S0 pressed, when quiet" },
            { "fish-ladder-tank.panel", "M1 runs and S1 at OFF, when quiet" },
            { "sawmill-dust-fan.panel", "MTR runs and OL tripped, when quiet" },
        };

    [Theory]
    [MemberData(nameof(Hazards))]
    public void Every_story_replays_through_live_to_its_end(string panel, string hazard)
    {
        var answer = Json("failures", panel, hazard, "--failures", "1");
        answer["sets"]!.AsArray().Should().NotBeEmpty();
        foreach (var story in answer["stories"]!.AsArray())
        {
            var steps = story!["steps"]!.AsArray().Select(s => s!).ToArray();
            var sets = steps.Where(IsMade).SelectMany(s => new[] { "--set", Operation(s) });
            var played = Json(["live", panel, "--from", "rest", .. sets]);
            var state = played["state"]!.AsObject();
            foreach (var (name, value) in Ends(steps))
                state[name]!.GetValue<string>().Should().Be(value, $"of {name} after {hazard}");
        }
    }

    [Fact]
    public void The_answer_fits_its_schema()
    {
        var asked = Ran.In(
            Panels,
            ["failures", "orchard-well-pump.panel", "M1 runs and S1 at OFF, when quiet", "--format", "json"]
        );
        Schemas.ShouldFit(asked.Out, "failures.schema.json");
        Schemas.ShouldFit(
            Ran.In(Panels, ["failures", "orchard-well-pump.panel", "--format", "json"]).Out,
            "failures.schema.json"
        );
    }

    [Fact]
    public void More_failures_lose_no_combination()
    {
        var one = Sets("1").ToArray();
        one.Should().NotBeEmpty();
        Sets("2").Should().Contain(one);

        static IEnumerable<string> Sets(string most) =>
            Json(
                "failures",
                "orchard-well-pump.panel",
                "M1 runs and S1 at OFF, when quiet",
                "--failures",
                most
            )["sets"]!
                .AsArray()
                .Select(set => set!.ToJsonString());
    }

    [Fact]
    public void A_condition_that_cannot_be_read_is_shown_with_a_caret()
    {
        var ran = Ran.In(Panels, ["failures", "orchard-well-pump.panel", "M9 runs"]);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("the question:1:7").And.Contain("never M9 runs").And.Contain("^^");
    }

    [Theory]
    [InlineData("", "the question is empty")]
    [InlineData("  ", "the question is empty")]
    [InlineData(
        "can M1 run via K1",
        "ask for a condition such as \"M1 runs\", or a never, stops or dead line"
    )]
    [InlineData("M1 runs\nM1 runs", "the question is one line")]
    public void What_cannot_be_asked_for_is_refused_with_a_way_out(string question, string complaint)
    {
        var ran = Ran.In(Panels, ["failures", "orchard-well-pump.panel", question]);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain(complaint);
    }

    /// <summary>The switch sticks, the contactor jams, one of two wires is gone: each alone undoes it.</summary>
    [Fact]
    public void A_stops_line_is_undone_by_all_that_refutes_it()
    {
        var sets = Alone("stops M1 by S1");
        sets.Should().Contain(Alone("M1 runs and S1 at OFF, when quiet"));
        sets.Should().Contain("K1.jams");
        Text("stops M1 by S1").Should().Contain("stops M1 by S1").And.Contain("undone by ");
    }

    [Fact]
    public void A_never_line_counts_passing_states_and_a_condition_does_not()
    {
        Alone("never M1 runs and S1 at OFF").Should().Equal("");
        Alone("never M1 runs and S1 at OFF, when quiet")
            .Should()
            .Equal(Alone("M1 runs and S1 at OFF, when quiet"));
    }

    [Fact]
    public void A_dead_line_is_undone_by_failures_that_keep_it_live()
    {
        Text("dead M1 when Q1 open").Should().Contain("holds: no combination of up to 1 failure undoes it");
        Alone("dead M1 when K1 out").Should().Contain("K1.weld1");
    }

    private static string Text(string question) =>
        Ran.In(Panels, ["failures", "orchard-well-pump.panel", question, "--failures", "1"]).Out;

    private static string[] Alone(string question) =>
        [
            .. Json("failures", "orchard-well-pump.panel", question, "--failures", "1")["sets"]!
                .AsArray()
                .Select(set => string.Join(' ', set!.AsArray().Select(name => name!.GetValue<string>()))),
        ];

    [Fact]
    public void Three_failures_are_too_many()
    {
        var ran = Ran.In(Panels, ["failures", "orchard-well-pump.panel", "--failures", "3"]);
        ran.Exit.Should().Be(Exit.Unusable);
        ran.Error.Should().Contain("--failures expects 0, 1 or 2, not '3'");
    }

    [Fact]
    public void What_has_failed_from_the_start_is_heeded_and_said()
    {
        var answer = Json("live", "orchard-well-pump.panel", "--failed", "K1=jams");
        answer["loads"]!["M1"]!.GetValue<string>().Should().Be("runs forward");
        answer["assumed"]!.ToJsonString().Should().Contain("K1 is taken to have failed");
    }

    [Theory]
    [InlineData("K1=explodes", "K1 cannot fail as 'explodes'; it has open, jams, weld1")]
    [InlineData("K9=jams", "nothing called K9 can fail; did you mean K1=jams?")]
    public void What_cannot_fail_is_named(string failed, string complaint) =>
        Ran.In(Panels, ["live", "orchard-well-pump.panel", "--failed", failed])
            .Error.Should()
            .Contain(complaint);

    private static bool IsMade(JsonNode step) =>
        step["mover"]!.GetValue<string>() is not ("settle" or "short");

    /// <summary>A failure K1.jams comes as the operation K1=jams; a position on the way as the one it leads to.</summary>
    private static string Operation(JsonNode step)
    {
        var (name, value) = (step["variable"]!.GetValue<string>(), step["value"]!.GetValue<string>());
        var at = name.LastIndexOf('.');
        value = value[(value.LastIndexOf('>') + 1)..].Replace("ing", "ed", StringComparison.Ordinal);
        return step["mover"]!.GetValue<string>() == "failure"
            ? $"{name[..at]}={name[(at + 1)..]}"
            : $"{name}={value}";
    }

    private static IEnumerable<(string Name, string Value)> Ends(IEnumerable<JsonNode> steps) =>
        steps
            .GroupBy(s => s["variable"]!.GetValue<string>(), s => s["value"]!.GetValue<string>())
            .Select(g => (g.Key, g.Last()));

    private static JsonNode Json(params string[] arguments)
    {
        var ran = Ran.In(Panels, [.. arguments, "--format", "json"]);
        ran.Error.Should().BeEmpty($"of {string.Join(' ', arguments)}");
        return JsonNode.Parse(ran.Out)!;
    }
}
