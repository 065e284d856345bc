using System.Text.Json;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

public class IntentsAgainstInterpreterTests(ITestOutputHelper output)
{
    private const int Panels = 400;

    [Fact]
    public void Intents_are_judged_alike()
    {
        using var interpreter = new Interpreter();
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var number in Enumerable.Range(300_000, Panels))
        foreach (var told in Compared(number, 256, interpreter))
            counts[told] = counts.GetValueOrDefault(told) + 1;
        foreach (var (told, count) in counts)
            output.WriteLine($"{count, 4} {told}");
        foreach (var form in Enum.GetValues<IntentForm>())
        foreach (var outcome in (Outcome[])[Outcome.Proved, Outcome.Refuted])
            counts.Should().Contain(c => c.Key.StartsWith($"{form} {outcome}") && c.Value >= Panels / 50);
    }

    /// <summary>Random intents of a random panel, judged by both: what came of it.</summary>
    internal static IEnumerable<string> Compared(int number, int mostAssignments, IInterpreter interpreter)
    {
        var netlist = RandomPanels.Panel(number, mostAssignments);
        var behaviour = new Behaviour(netlist, new DiagramTable());
        var intents = new RandomIntents(netlist, new System.Random(number)).All().ToArray();
        var asked = netlist with { Intents = intents };
        foreach (var (index, intent) in intents.Index())
        {
            var mine = new Questions(behaviour).Answer(intent);
            var theirs = interpreter.Ask("intent", asked, $"\"index\":{index}");
            var judged = new Judged(behaviour, intent, mine, theirs);
            judged.Difference().Should().BeNull($"of panel {number}, {intent.Form} {index}");
            yield return judged.Told;
        }
    }

    /// <summary>One intent with both answers.</summary>
    private sealed record Judged(Behaviour Panel, Intent Intent, Verdict Mine, JsonElement Theirs)
    {
        public string Told =>
            $"{Intent.Form} {Mine.Outcome}{(Mine.ThroughUncertain ? " if a coil pulls" : "")}";

        private string TheirVerdict => Theirs.GetProperty("verdict").GetString()!;

        /// <summary>Null when the answers agree.</summary>
        public string? Difference()
        {
            var mine = Mine.Outcome.ToString().ToLowerInvariant();
            if (mine != TheirVerdict && !MayDiffer())
                return $"engine {mine} {Mine.StopFailure}, interpreter {TheirVerdict}: {Theirs.GetRawText()}";
            return Mine.Story is null ? null : Replays() ?? AsShort();
        }

        /// <summary>
        /// The engine also calls an intent vacuous when what it speaks of is possible but never reached, and a stop
        /// refuted that cannot be operated, after which something other than a start command starts the load, or
        /// with which operated the load runs on and off for ever.
        /// </summary>
        private bool MayDiffer() =>
            TheirVerdict == "proved" && Mine.Outcome == Outcome.Vacuous && Intent.Form != IntentForm.Stops
            || Mine.StopFailure == StopFailure.CannotBeOperated
            || TheirVerdict == "proved" && Mine.StopFailure == StopFailure.RunsAgain
            || TheirVerdict == "proved" && Mine.StopFailure == StopFailure.KeepsRunning && RunsOperated();

        private bool RunsOperated() =>
            Panel.Table.Meet(
                Panel.Table.And(Panel.ReachableSettled, Panel.Of(new Runs(Intent.Of!, Turning.Any))),
                Panel.Of(new VariableIs(Intent.By[0].Variable, Intent.By[0].Value))
            );

        /// <summary>Every step of the story can be made where it is made.</summary>
        private string? Replays()
        {
            var state = Mine.Story!.Start;
            foreach (var (move, after) in Mine.Story.Steps)
            {
                var open = Panel.Table.AnyOf(move.Certain, move.Shorted, move.Uncertain);
                if (!Panel.Space.Holds(open, state) || state.With(move.Variable, move.To) != after)
                    return $"the story breaks at {move}";
                state = after;
            }
            return null;
        }

        /// <summary>No story is longer than the interpreter's, unless it avoids an uncertain coil.</summary>
        private string? AsShort()
        {
            if (Intent.Form == IntentForm.Stops || Panel.RestsOnUncertain)
                return null;
            var moves = Theirs
                .GetProperty("story")
                .GetProperty("moves")
                .EnumerateArray()
                .Select(m => m.GetProperty("by").GetString());
            var theirs = moves.CountBy(by => by is "settle" or "short").ToDictionary();
            var mine = Mine.Story!.Steps.CountBy(s => s.Move.IsUrgent).ToDictionary();
            return new[] { false, true }.All(urgent =>
                mine.GetValueOrDefault(urgent) == theirs.GetValueOrDefault(urgent)
            )
                ? null
                : $"the story has {Mine.Story.Steps.Count} steps: {Theirs.GetRawText()}";
        }
    }
}
