using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Failures;

public class ShownByHandTests(ITestOutputHelper output)
{
    private const int First = 760_000;
    private const int Panels = 160;
    private const int MostFailing = 3;

    [Fact]
    public void What_shows_a_failure_is_what_the_words_say()
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var told in Enumerable.Range(First, Panels).SelectMany(n => Compared(n)))
            counts[$"{told}"] = counts.GetValueOrDefault($"{told}") + 1;
        foreach (var (what, count) in counts)
            output.WriteLine($"{count, 4} {what}");
        counts["Hidden"].Should().BeGreaterThan(Panels / 4);
        counts["Revealed"].Should().BeGreaterThan(Panels / 4);
    }

    /// <summary>The same at a glance.</summary>
    [Theory, Trait("Set", "engine")]
    [MemberData(nameof(Few))]
    public void So_it_is_in_a_few_small_panels(int number) =>
        Compared(number, mostAssignments: 128).Should().NotBeEmpty();

    /// <summary>Panels in which there is much to tell apart: parts that stay, several signs, cells, uncertain coils.</summary>
    public static TheoryData<int> Few =>
        [
            770_033,
            770_086,
            770_183,
            770_187,
            770_195,
            770_213,
            770_244,
            770_270,
            770_316,
            770_334,
            770_345,
            770_450,
            770_459,
        ];

    private static IEnumerable<Disclosure> Compared(int number, int mostAssignments = 256)
    {
        var netlist = FailingPanels.Panel(number, MostFailing, mostAssignments);
        var panel = new Behaviour(netlist, new DiagramTable(), failures: 1);
        var (revealing, hand) = (new Revealing(panel), new ShownByHand(panel));
        foreach (var failure in panel.Space.FailureVariables)
        {
            var told =
                !hand.Happens(failure) ? Disclosure.Impossible
                : hand.MayShow(failure) ? Disclosure.Revealed
                : Disclosure.Hidden;
            var name = panel.Space.Variables[failure].Name;
            var revealed = revealing.Of(panel.Space.Variables[failure]);
            revealed.Disclosure.Should().Be(told, $"of {name} in panel {number}");
            if (told == Disclosure.Revealed)
            {
                hand.SurelyShows(failure).Should().BeTrue($"of {name} in panel {number}");
            }
            // Before the response begins a move may be one that a short or an uncertain coil leaves open.
            if (told == Disclosure.Revealed && IsSure(panel, revealed.Story!))
            {
                hand.Tells(revealed.Story!, failure).Should().BeTrue($"of {name} in panel {number}");
                hand.Signs(revealed.Story!)
                    .Should()
                    .Contain(s => s.SequenceEqual(revealed.Signs), $"of {name} in panel {number}");
            }
            yield return told;
        }
    }

    private static bool IsSure(Behaviour panel, Story story) =>
        story
            .Steps.Zip([story.Start, .. story.Steps.Select(step => step.After)])
            .All(pair => panel.Space.Holds(pair.First.Move.Certain, pair.Second));
}
