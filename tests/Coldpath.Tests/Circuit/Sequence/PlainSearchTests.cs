using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

public class PlainSearchTests
{
    private const int First = 500_000;
    private const int Panels = 120;
    private const int Targets = 3;

    [Fact]
    public void Sets_of_states_are_those_that_a_plain_search_finds()
    {
        foreach (var number in Enumerable.Range(First, Panels))
            Compare(number, Panel(number));
    }

    /// <summary>The same at a glance.</summary>
    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Few))]
    public void So_are_those_of_a_few_panels(int number) => Compare(number, Panel(number));

    public static TheoryData<int> Few => [.. Enumerable.Range(First + Panels, 9)];

    [Fact]
    public void No_story_is_shorter_or_earlier_in_declared_order() =>
        Enumerable
            .Range(First, Panels)
            .Sum(number => CompareStories(number, Panel(number)))
            .Should()
            .BeGreaterThan(Panels / 2);

    /// <summary>The same at a glance.</summary>
    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Few))]
    public void Nor_is_one_of_a_few_panels(int number) =>
        CompareStories(number, Panel(number)).Should().BeInRange(0, Targets);

    private static void Compare(int number, Behaviour panel)
    {
        var plain = new PlainSearch(panel);
        var race = plain.Race;

        Same("settled", panel.Settling.Settled, plain.Settled);
        Same("steady", panel.Settling.Steady, plain.Steady);
        Same("race", panel.Settling.Race, race);
        plain.All.Where(s => panel.Settling.Races(s) != race.Contains(s)).Should().BeEmpty();
        Same("standing", panel.Settling.Standing, plain.Standing);
        Same("reachable", panel.Reachable, plain.Reachable);

        var some = panel.Space.Table.And(panel.Space.Domain, panel.Network.Live(panel.Netlist.Nets[^1]));
        var chosen = plain.All.Where(s => panel.Space.Holds(some, s)).ToHashSet();
        Same("after", panel.Settling.After(some), plain.Following(chosen));
        Same(
            "before",
            panel.Settling.Before(some),
            plain.All.Where(s => plain.Following([s]).Overlaps(chosen)).ToHashSet()
        );
        var allowed = plain.All.Where(s =>
            panel.Netlist.Constraints.All(c => panel.Space.Holds(panel.Of(c.Holds), s))
        );
        Same("constrained", panel.Constrained, allowed.ToHashSet());

        void Same(string what, Diagram mine, IReadOnlySet<State> theirs) =>
            plain
                .All.Where(s => panel.Space.Holds(mine, s) != theirs.Contains(s))
                .Should()
                .BeEmpty($"{what} of panel {number}");
    }

    /// <summary>How many of a few states chosen at random are reached.</summary>
    private static int CompareStories(int number, Behaviour panel)
    {
        if (panel.RestsOnUncertain)
            return 0;
        var told = 0;
        var plain = new PlainSearch(panel);
        var dice = new System.Random(number);
        foreach (
            var target in Enumerable.Range(0, Targets).Select(_ => plain.All[dice.Next(plain.All.Count)])
        )
        {
            var story = panel.ShortestTo(panel.Space.Of(target));
            var moves = plain.Shortest(s => s == target);
            if (moves is null)
                story.Should().BeNull();
            else
                story!.Steps.Select(s => s.Move).Should().Equal(moves, $"panel {number}");
            told += moves is null ? 0 : 1;
        }
        return told;
    }

    private static Behaviour Panel(int number) => new(RandomPanels.Panel(number, 128), new DiagramTable());
}
