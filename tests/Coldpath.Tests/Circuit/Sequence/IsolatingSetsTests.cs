using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class IsolatingSetsTests
{
    /// <summary>
    /// The bridge network of the reliability textbooks: its minimal cut sets are {1,2}, {4,5}, {1,3,5}, {2,3,4}
    /// (recomputed by brute force).
    /// </summary>
    [Fact]
    public void A_bridge_is_isolated_by_its_minimal_cuts()
    {
        var sets = Of(Bridge(), "n3");

        sets.Count.Should().Be(4);
        Tags(sets).Should().Equal("1,2", "4,5", "1,3,5", "2,3,4");
        sets.AreEnough(["1", "2", "4"]).Should().BeTrue();
        sets.AreEnough(["1", "5"]).Should().BeFalse();
        var survival = sets.Survival(["1", "5"])!;
        survival.Done.Should().Contain(["1", "5"]);
        sets.Survival(["1", "2"]).Should().BeNull();
    }

    [Fact]
    public void The_line_side_of_the_only_isolator_has_no_set()
    {
        var sets = Of(Bridge(), "L1");

        sets.Count.Should().Be(0);
        sets.Survival(["1", "2", "3", "4", "5"]).Should().NotBeNull();
    }

    [Fact]
    public void What_is_dead_anyway_needs_no_isolator()
    {
        var sets = Of(Bridge().Element("far", ElementType.Load, "x", "PE", Expression.True), "x");

        sets.Cheapest(_ => 1).Should().ContainSingle().Which.Should().BeEmpty();
    }

    [Fact]
    public void A_neutral_that_holds_the_target_to_earth_must_be_whole()
    {
        var board = new Board()
            .Switch("Q1", "closed", "open")
            .Contact("L1", "a", "Q1", "closed")
            .Isolator("Q1")
            .Element("lamp", ElementType.Load, "L2", "n1", Expression.True)
            .Element("neutral", ElementType.Conductor, "n1", "N", Expression.True)
            .Element("heater", ElementType.Load, "a", "n1", Expression.True);
        var isolators = new Isolators(board.Build(), new DiagramTable());

        new IsolatingSets(isolators, "a").AreEnough(["Q1"]).Should().BeTrue();
        isolators.OnlyWhileWhole(["a"], ["Q1"]).Should().Equal("bond", "neutral");
    }

    private static Board Bridge()
    {
        var board = new Board();
        foreach (
            var (name, a, b) in (IEnumerable<(string, string, string)>)
                [
                    ("1", "L1", "n1"),
                    ("2", "L1", "n2"),
                    ("3", "n1", "n2"),
                    ("4", "n1", "n3"),
                    ("5", "n2", "n3"),
                ]
        )
            board.Switch(name, "open", "closed").Contact(a, b, name, "closed").Isolator(name);
        return board;
    }

    private static IsolatingSets Of(Board board, string target) =>
        new(new Isolators(board.Build(), new DiagramTable()), target);

    private static IEnumerable<string> Tags(IsolatingSets sets) =>
        sets.Cheapest(_ => 1).Select(set => string.Join(",", set.Select(act => act.Name)));
}
