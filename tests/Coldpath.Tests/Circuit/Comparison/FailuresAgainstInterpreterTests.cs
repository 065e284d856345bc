using System.Text.Json;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Cut sets, their stories, and what stays hidden: the engine against the interpreter, which visits every state.</summary>
public class FailuresAgainstInterpreterTests(ITestOutputHelper output)
{
    private const int Panels = 500;
    private const int MostFailing = 4;
    private const int Hazards = 3;

    [Fact]
    public void Cut_sets_and_hidden_failures_are_the_same()
    {
        using var interpreter = new Interpreter();
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var number in Enumerable.Range(700_000, Panels))
        {
            foreach (var what in Compared(number, 256, interpreter))
                counts[what] = counts.GetValueOrDefault(what) + 1;
        }
        foreach (var (what, count) in counts)
            output.WriteLine($"{count, 4} panels with {what}");
        counts["a set of 2"].Should().BeGreaterThanOrEqualTo(Panels / 5);
        counts["a failure that is hidden"].Should().BeGreaterThanOrEqualTo(Panels / 10);
        counts["a failure that is revealed"].Should().BeGreaterThanOrEqualTo(Panels / 10);
    }

    /// <summary>The ground that everything else about failures stands on: state for state, with none, one and two of them.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_same_states_are_reached(int most)
    {
        using var interpreter = new Interpreter();
        foreach (var number in Enumerable.Range(720_000, Panels / 2))
        {
            var netlist = Failing(number);
            var behaviour = new Behaviour(netlist, new DiagramTable(), most);
            var table = interpreter.Ask("table", netlist, $"\"failures\":{most}");
            var bits = new Bits(behaviour.Space);
            Differs(behaviour.Reachable, "reachable").Should().Be(-1, $"of panel {number}");
            Differs(behaviour.ReachableSettled, "reachableSettled").Should().Be(-1, $"of panel {number}");

            int Differs(Diagram mine, string theirs) => bits.FirstDifference(mine, table.GetProperty(theirs));
        }
    }

    /// <summary>
    /// What is refuted with a failure allowed is refuted by both, but for stops that the engine alone calls refuted
    /// because the control cannot be operated.
    /// </summary>
    [Fact]
    public void Intents_that_allow_a_failure_are_judged_alike()
    {
        using var interpreter = new Interpreter();
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var number in Enumerable.Range(730_000, Panels / 2))
        {
            var netlist = Failing(number);
            var behaviour = new Behaviour(netlist, new DiagramTable(), failures: 1);
            Intent[] intents =
            [
                .. new RandomIntents(netlist, new System.Random(number))
                    .All()
                    .Select(i => i with { Failures = 1 }),
            ];
            foreach (var (index, intent) in intents.Index())
            {
                var mine = new Questions(behaviour).Answer(intent);
                if (mine.StopFailure == StopFailure.CannotBeOperated)
                    continue;
                var theirs = interpreter
                    .Ask("intent", netlist with { Intents = intents }, $"\"index\":{index}")
                    .GetProperty("verdict")
                    .GetString()!;
                var told = mine.Outcome.ToString().ToLowerInvariant();
                // The engine also calls vacuous what is never reached though it is possible.
                if (!(told == "vacuous" && theirs == "proved" && intent.Form != IntentForm.Stops))
                    told.Should().Be(theirs, $"of panel {number}, {intent.Form} {index}");
                counts[$"{intent.Form} {told}"] = counts.GetValueOrDefault($"{intent.Form} {told}") + 1;
            }
        }
        foreach (var (told, count) in counts)
            output.WriteLine($"{count, 4} {told}");
        foreach (var form in Enum.GetValues<IntentForm>())
        foreach (var outcome in (string[])["proved", "refuted"])
            counts
                .GetValueOrDefault($"{form} {outcome}")
                .Should()
                .BeGreaterThanOrEqualTo(Panels / 50, $"{form} {outcome}");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Searching_a_few_failures_at_a_time_finds_the_same_sets(int most)
    {
        var parted = 0;
        foreach (var number in Enumerable.Range(710_000, 60))
        {
            var bare = RandomPanels.Panel(number);
            var netlist = bare with { Intents = [.. Hazardous(number, bare)] };
            var parts = FailureParts.Of(netlist, most, groupSize: 2).ToArray();
            parted += parts.Length > 1 ? 1 : 0;
            foreach (var line in Enumerable.Range(0, netlist.Intents.Count))
            {
                var whole = Sets(netlist.WithFailures(netlist.AllFailures().ToHashSet()), most, line);
                var together = FailureSet.Minimal(parts.SelectMany(part => Sets(part, most, line)));
                Told(together).Should().BeEquivalentTo(Told(whole), $"of panel {number}");
            }
        }
        parted.Should().BeGreaterThan(20);

        static IReadOnlyList<FailureSet> Sets(Netlist netlist, int most, int line)
        {
            var behaviour = new Behaviour(netlist, new DiagramTable(), most);
            var hazard = behaviour.Of(netlist.Intents[line].When);
            return new CutSets(behaviour).Of(behaviour.Table.And(hazard, behaviour.ReachableSettled));
        }

        static IEnumerable<string> Told(IEnumerable<FailureSet> sets) =>
            sets.Select(s => $"{Named(s.Members.Select(m => m.Name))} {s.Uncertain}");
    }

    /// <summary>A random panel in which a few of its parts may fail.</summary>
    /// <summary>What came of comparing sets of failures of a random panel, and what shows them.</summary>
    internal static IEnumerable<string> Compared(int number, int mostAssignments, IInterpreter interpreter)
    {
        var netlist = Failing(number, mostAssignments);
        return CompareSets(number, netlist, interpreter)
            .Concat(CompareShowing(number, netlist, interpreter))
            .ToHashSet();
    }

    private static Netlist Failing(int number, int mostAssignments = 256)
    {
        var netlist = RandomPanels.Panel(number, mostAssignments);
        var dice = new System.Random(number);
        var opening = OpenParts.Of(netlist).Select(p => p.Name).ToHashSet();
        var shuffled = netlist.AllFailures().OrderBy(_ => dice.Next()).ToLookup(opening.Contains);
        // What only opens is in the majority and seldom brings a hazard about.
        var chosen = shuffled[false].Take(MostFailing - 1).Concat(shuffled[true]).Take(MostFailing);
        return netlist.WithFailures(chosen.ToHashSet());
    }

    private static IEnumerable<string> CompareSets(int number, Netlist netlist, IInterpreter interpreter)
    {
        var behaviour = new Behaviour(netlist, new DiagramTable(), failures: 2);
        Intent[] intents =
        [
            .. Hazardous(number, netlist),
            .. new FailureHazards(behaviour)
                .Standing(failures: 2)
                .Select(when => new Intent { Form = IntentForm.Never, When = when }),
        ];
        foreach (var (index, hazard) in intents.Select(i => i.When).Index())
        {
            var sets = new CutSets(behaviour).Of(
                behaviour.Table.And(behaviour.Of(hazard), behaviour.ReachableSettled)
            );
            var answer = interpreter.Ask(
                "failures",
                netlist with
                {
                    Intents = intents,
                },
                $"\"failures\":2,\"index\":{index}"
            );
            var theirs = answer
                .GetProperty("sets")
                .EnumerateArray()
                .Select(set => Named(set.EnumerateArray().Select(name => name.GetString()!)))
                .Zip(answer.GetProperty("stories").EnumerateArray().Select(Length))
                .ToDictionary(set => set.First, set => set.Second);
            Minimal(sets).Should().BeEquivalentTo(theirs.Keys, $"of panel {number}");
            foreach (var set in sets)
            {
                Replays(behaviour, set.Story).Should().BeNull($"of panel {number}");
                behaviour.Space.Holds(behaviour.Of(hazard), set.Story.End).Should().BeTrue();
                if (!behaviour.RestsOnUncertain)
                    Length(set.Story)
                        .Should()
                        .Be(theirs[Named(set.Members.Select(m => m.Name))], $"of panel {number}");
                yield return behaviour.RestsOnUncertain
                    ? "stories that an uncertain coil may lengthen"
                    : "stories of one length";
                yield return set.Members.Count == 0 ? "no failure needed" : $"a set of {set.Members.Count}";
            }
        }
    }

    private static IEnumerable<string> CompareShowing(int number, Netlist netlist, IInterpreter interpreter)
    {
        var behaviour = new Behaviour(netlist, new DiagramTable(), failures: 1);
        var revealing = new Revealing(behaviour);
        var theirs = interpreter.Ask("revealed", netlist);
        foreach (var failure in netlist.Variables.Where(v => v.Kind == VariableKind.Failure))
        {
            var mine = revealing.Of(failure).Disclosure.ToString().ToLowerInvariant();
            mine.Should()
                .Be(theirs.GetProperty(failure.Name).GetString(), $"of {failure.Name} in panel {number}");
            yield return $"a failure that is {mine}";
        }
    }

    private static IEnumerable<Intent> Hazardous(int number, Netlist netlist) =>
        Enumerable
            .Range(0, Hazards)
            .SelectMany(i => new RandomIntents(netlist, new System.Random(number * Hazards + i)).All())
            .Where(intent => intent.Form == IntentForm.Never);

    /// <summary>The interpreter makes no difference between sure and uncertain sets: the smaller one stands for both.</summary>
    private static IEnumerable<string> Minimal(IReadOnlyList<FailureSet> sets)
    {
        var names = sets.Select(s => s.Members.Select(m => m.Name).ToHashSet()).ToArray();
        return names.Where(set => !names.Any(other => other.IsProperSubsetOf(set))).Select(Named);
    }

    /// <summary>How many moves are made, and how many follow by themselves.</summary>
    private static (int Made, int Followed) Length(JsonElement moves)
    {
        var followed = moves
            .EnumerateArray()
            .Count(m => m.GetProperty("by").GetString() is "settle" or "short");
        return (moves.GetArrayLength() - followed, followed);
    }

    private static (int Made, int Followed) Length(Story story)
    {
        var followed = story.Steps.Count(s => s.Move.IsUrgent);
        return (story.Steps.Count - followed, followed);
    }

    private static string Named(IEnumerable<string> names) =>
        string.Join(' ', names.Order(StringComparer.Ordinal));

    /// <summary>Every step of the story can be made where it is made; null when so.</summary>
    private static string? Replays(Behaviour behaviour, Story story)
    {
        var state = story.Start;
        foreach (var (move, after) in story.Steps)
        {
            var open = behaviour.Table.AnyOf(move.Certain, move.Shorted, move.Uncertain);
            if (!behaviour.Space.Holds(open, state) || state.With(move.Variable, move.To) != after)
                return $"the story breaks at {move}";
            state = after;
        }
        return null;
    }
}
