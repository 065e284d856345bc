using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>What starts again by itself, against a search state by state.</summary>
[Trait("Set", "engine")]
public class RestartingTests
{
    public static TheoryData<int> Panels => [.. Enumerable.Range(870_000, 24)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void A_load_starts_again_where_a_plain_search_says_so(int number)
    {
        var panel = new Behaviour(RandomPanels.Panel(number, 96), new DiagramTable());
        var plain = new PlainSearch(panel);
        var restarting = new Restarting(panel);
        foreach (var load in panel.Netlist.Loads)
        foreach (var (index, variable) in panel.Netlist.Variables.Index().Where(v => Goes(v.Item)))
        {
            var running = panel.Of(new Runs(load.Name, Turning.Any));
            var cause = variable.Kind == VariableKind.Trip ? Cause.Trip : Cause.Process;
            var mine = restarting.Of(running, index, t => t.Cause == cause || t.Cause == Cause.Operator);
            var theirs = Again(
                panel,
                plain,
                running,
                index,
                t => t.Cause == cause || t.Cause == Cause.Operator
            );
            (mine is not null).Should().Be(theirs.Count > 0, $"{load.Name} by {variable.Name} of {number}");
            if (mine is not var (states, story))
                continue;
            plain
                .All.Where(s => panel.Space.Holds(states, s) != theirs.Contains(s))
                .Should()
                .BeEmpty($"{load.Name} by {variable.Name} of {number}");
            theirs.Should().Contain(story.End);
            plain.AtRest.Should().Contain(story.Start);
            story
                .Steps.Should()
                .Contain(s => s.Move.Variable == index && s.Move.To == panel.Space.Rest[index]);
        }
    }

    private static bool Goes(Variable variable) =>
        variable.Kind is VariableKind.Supply or VariableKind.Trip or VariableKind.Position;

    private static HashSet<State> Again(
        Behaviour panel,
        PlainSearch plain,
        Diagram running,
        int variable,
        Func<Transition, bool> among
    )
    {
        var rest = panel.Space.Rest[variable];
        var stores = panel
            .Netlist.Supplies.Concat(panel.Netlist.Converters.Select(c => c.Output))
            .Where(s => s.Store?.Variable is not null)
            .Select(s => panel.Space.IndexOf(s.Store!.Variable!))
            .ToArray();
        bool Quiet(State s) =>
            plain.Settled.Contains(s)
            && !panel.Transitions.Any(t => t.Cause == Cause.Delay && panel.Space.Holds(t.Certain, s));
        bool Runs(State s) => panel.Space.Holds(running, s);
        bool LetGo(State s) =>
            panel
                .Space.Variables.Index()
                .All(v => !v.Item.Momentary || s[v.Index] == panel.Space.Rest[v.Index]);
        bool Follows(Transition t) => t.IsUrgent || t.Cause is Cause.Delay or Cause.Condition;

        var before = plain
            .SurelyFrom(plain.AtRest, t => t.Cause != Cause.Failure)
            .Where(s => Quiet(s) && Runs(s) && s[variable] == rest && LetGo(s));
        var stopped = plain
            .SurelyFrom(before, t => Follows(t) || t.Variable == variable && t.To != rest && among(t))
            .Where(s => Quiet(s) && !Runs(s) && s[variable] != rest)
            .Where(s => stores.All(v => s[v] == panel.Space.Rest[v]));
        return
        [
            .. plain
                .SurelyFrom(stopped, t => Follows(t) || t.Variable == variable && t.To == rest && among(t))
                .Where(s => Quiet(s) && Runs(s) && s[variable] == rest),
        ];
    }
}
