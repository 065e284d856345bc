using Coldpath.Answers;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Cli;
using Coldpath.Cli.Commands;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Json;
using Coldpath.Sheets.Reports.Text;
using FluentAssertions;
using Xunit;
using Verdict = Coldpath.Answers.Verdict;

namespace Coldpath.Tests.Answers.Meshes;

/// <summary>A search that its node budget ends says so, exits as unfinished, and still tells what it knows.</summary>
public sealed class BoundedTests
{
    private static readonly MeshNetwork Mesh = MeshNetwork.Grid(6, 6);
    private static readonly string[] Corner = ["Q1", "Q31"];

    [Fact]
    public void One_minimal_set_is_told_and_nothing_is_claimed_of_the_others()
    {
        var answer = Ask(nodes: 2_000, null);
        answer.Complete.Should().BeFalse();
        answer.Count.Should().BeNull();
        answer.IsImpossible.Should().BeFalse();
        answer.Incomplete.Should().ContainSingle().Which.Should().StartWith("bounded: ");
        var set = answer.Sets.Should().ContainSingle().Which.Isolators.Select(i => i.Device).ToArray();
        var sets = Sets();
        sets.AreEnough(set).Should().BeTrue();
        set.Should().OnlyContain(one => !sets.AreEnough(set.Where(other => other != one)));
    }

    [Fact]
    public void It_is_printed_as_bounded_and_ends_as_unfinished()
    {
        var answer = Ask(nodes: 2_000, null);
        IsolateCommand.ExitOf(answer).Should().Be(Exit.Unfinished);
        var text = IsolateText.Of(answer).ToString();
        text.Should().Contain("NOT COMPLETE").And.Contain("more than 2,000 diagram nodes");
        text.Should().Contain("one minimal set of some number").And.NotContain("no set of");
        IsolateJson.Of(answer).Should().Contain("\"count\": null").And.Contain("\"cut\": false");
    }

    [Fact]
    public void A_set_of_ones_own_is_judged_all_the_same()
    {
        Ask(nodes: 2_000, Corner).Have!.Enough.Should().Be(Verdict.Yes);
        Ask(nodes: 2_000, ["Q1"]).Have!.Enough.Should().Be(Verdict.No);
    }

    /// <summary>Its selectors and crossed contacts leave variables that have no one worst value.</summary>
    [Fact]
    public void With_hardly_any_nodes_nothing_is_known_and_nothing_is_thrown()
    {
        var evidence = Opened.From(Quarry, CancellationToken.None).Evidence!;
        var answer = Ask(evidence, nodes: 2, "U1", ["Q1"]);
        answer.Complete.Should().BeFalse();
        answer.Sets.Should().BeEmpty();
        answer.Count.Should().BeNull();
        answer.Have!.Enough.Should().Be(Verdict.Open);
        IsolateCommand.ExitOf(answer).Should().Be(Exit.Unfinished);
        IsolateText
            .Of(answer)
            .ToString()
            .Should()
            .NotContain("no set of")
            .And.Contain("NOT proved to be enough");
    }

    private static IsolateAnswer Ask(int nodes, string[]? have) =>
        Ask(Opened.From(Source, CancellationToken.None).Evidence!, nodes, "M1", have);

    private static IsolateAnswer Ask(Evidence evidence, int nodes, string target, string[]? have) =>
        new IsolateQuestion(evidence, nodes).Ask(
            Targets.Find(evidence.Whole.Netlist, target),
            [target],
            have
        );

    private static IsolatingSets Sets()
    {
        var netlist = Opened.From(Source, CancellationToken.None).Evidence!.Whole.Netlist;
        var nets = Targets.Find(netlist, "M1").Select(p => p.Net);
        return new(new Isolators(netlist, new DiagramTable()), nets);
    }

    private static SourceText Quarry =>
        new("quarry", File.ReadAllText(Path.Combine(Samples.Root, "panels/quarry-pump-bypass.panel")));

    private static SourceText Source => new("mesh", Mesh.Text());
}
