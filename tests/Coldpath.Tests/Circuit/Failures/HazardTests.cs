using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>
/// The failures with which a line does not hold: a set suffices when the line is refuted in the panel in which its
/// members alone may happen, and is minimal when none of its parts suffices.
/// </summary>
[Trait("Set", "engine")]
public class HazardTests
{
    private const int Most = 2;

    public static TheoryData<int> Panels => [.. Enumerable.Range(890_000, 8)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void Sets_are_those_whose_members_alone_refute_the_line(int number)
    {
        var (bare, names) = Failing(number);
        var behaviour = new Behaviour(bare.WithFailures(names.ToHashSet()), new DiagramTable(), Most);
        foreach (
            var line in new RandomIntents(
                bare.WithFailures(new HashSet<string>()),
                new System.Random(number)
            ).All()
        )
        {
            var sets = Hazard.Sets(behaviour, line);
            var expected =
                line.Form == IntentForm.Can
                    ? []
                    : Minimal(bare, names, alone => Refuted(alone, line)).ToArray();
            Named(sets).Should().BeEquivalentTo(expected, $"{line.Form} of panel {number}");
            foreach (var set in sets)
            {
                behaviour.Space.Holds(set.States, set.Story.End).Should().BeTrue();
                Failed(behaviour, set).Should().Equal(set.Members.Select(m => m.Name));
                set.Uncertain.Should().Be(set.Story.ThroughUncertain);
            }
        }
    }

    /// <summary>The same when only some moves may be made, from rest or from some states on.</summary>
    [Theory]
    [MemberData(nameof(Panels))]
    public void So_they_are_when_only_some_moves_may_be_made(int number)
    {
        var (bare, names) = Failing(number);
        var dice = new System.Random(number);
        var behaviour = new Behaviour(bare.WithFailures(names.ToHashSet()), new DiagramTable(), Most);
        var still = bare.Variables[dice.Next(bare.Variables.Count)].Name;
        var load = new Runs(bare.Loads[dice.Next(bare.Loads.Count)].Name, Turning.Any);

        Named(new CutSets(behaviour, Moves(behaviour)).Of(Hazardous(behaviour)))
            .Should()
            .BeEquivalentTo(Minimal(bare, names, alone => Comes(alone, begun: null)), $"of panel {number}");
        Named(new CutSets(behaviour, Idle(behaviour), Moves(behaviour)).Of(Hazardous(behaviour)))
            .Should()
            .BeEquivalentTo(
                Minimal(bare, names, alone => Comes(alone, begun: Idle)),
                $"from idle in {number}"
            );

        Func<Transition, bool> Moves(Behaviour panel) =>
            t => t.IsUrgent || panel.Space.Variables[t.Variable].Name != still;
        Diagram Hazardous(Behaviour panel) => panel.Table.And(panel.Of(load), panel.Quiet);
        Diagram Idle(Behaviour panel) => panel.Table.Except(panel.Quiet, panel.Of(load));

        bool Comes(Behaviour panel, Func<Behaviour, Diagram>? begun)
        {
            var reached = begun is null
                ? panel.ReachAtRest(Moves(panel), uncertainToo: true)
                : panel.ReachFrom(
                    panel.Table.And(panel.Reachable, begun(panel)),
                    uncertainToo: true,
                    Moves(panel)
                );
            return panel.Table.Meet(reached.All, Hazardous(panel));
        }
    }

    private static (Netlist Bare, string[] Names) Failing(int number)
    {
        var bare = RandomPanels.Panel(number, 48);
        var dice = new System.Random(number);
        return (bare, [.. bare.AllFailures().OrderBy(_ => dice.Next()).Take(3)]);
    }

    private static bool Refuted(Behaviour panel, Intent line)
    {
        // Of "dead" only states that are reached count.
        var asked =
            line.Form == IntentForm.Dead
                ? new Intent
                {
                    Form = IntentForm.Never,
                    When = Expression.AllOf(
                        line.When,
                        Expression.AnyOf(
                            Terminals.Of(panel.Netlist, line.Of!).Select(Expression (n) => new Live(n))
                        )
                    ),
                }
                : line;
        return new Questions(panel).Answer(asked with { Failures = 0 }).Outcome == Outcome.Refuted;
    }

    /// <summary>The sets that suffice while no part of them does, their members in declared order.</summary>
    private static List<string> Minimal(Netlist bare, string[] names, Func<Behaviour, bool> suffices)
    {
        var found = new List<HashSet<string>>();
        var sets = Enumerable
            .Range(0, 1 << names.Length)
            .Select(mask => names.Where((_, i) => (mask >> i & 1) != 0).ToHashSet())
            .Where(set => set.Count <= Most)
            .OrderBy(set => set.Count);
        foreach (var set in sets.Where(set => !found.Exists(smaller => smaller.IsSubsetOf(set))))
            if (suffices(new Behaviour(bare.WithFailures(set), new DiagramTable(), set.Count)))
                found.Add(set);
        return [.. found.Select(Joined)];
    }

    private static List<string> Named(IEnumerable<FailureSet> sets) =>
        [.. sets.Select(set => Joined(set.Members.Select(m => m.Name)))];

    private static IEnumerable<string> Failed(Behaviour panel, FailureSet set) =>
        panel
            .Space.FailureVariables.Where(v => set.Story.End[v] != panel.Space.Rest[v])
            .Select(v => panel.Space.Variables[v].Name);

    private static string Joined(IEnumerable<string> names) =>
        string.Join(' ', names.Order(StringComparer.Ordinal));
}
