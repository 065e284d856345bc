using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>
/// The pressure-tank example of NUREG-0492, Fault Tree Handbook (US NRC, 1981), repeated in NASA's Fault Tree Handbook
/// with Aerospace Applications (2002): which of its five contacts must fail shut for the pump to run on at full
/// pressure. The published cut sets are from memory, without the tank itself; brute force over the encoding gives the same.
/// </summary>
public sealed class PressureTankTests
{
    private static readonly HashSet<string> Considered =
    [
        "S1.shut",
        "K1.shut",
        "K2.shut",
        "B1.shut",
        "K3.shut",
    ];

    [Fact]
    public void It_has_exactly_the_published_cut_sets() =>
        Sets(Panel().Intents[0], Considered, most: 5)
            .Should()
            .BeEquivalentTo(["K2.shut", "B1.shut S1.shut", "B1.shut K1.shut", "B1.shut K3.shut"]);

    [Fact]
    public void With_the_button_held_the_pressure_switch_alone_would_do() =>
        Sets(WithoutButton(Panel().Intents[0]), Considered, most: 2)
            .Should()
            .BeEquivalentTo(["K2.shut", "B1.shut"]);

    [Fact]
    public void Every_story_ends_where_the_pump_runs_at_full_pressure()
    {
        var behaviour = new Behaviour(Panel().WithFailures(Considered), new DiagramTable(), failures: 2);
        var hazard = behaviour.Of(Panel().Intents[0].When);
        foreach (var set in new CutSets(behaviour).Of(hazard))
        {
            behaviour.Space.Holds(hazard, set.Story.End).Should().BeTrue();
            set.Story.Steps.Count(s => s.Move.Cause == Cause.Failure).Should().Be(set.Members.Count);
            set.Uncertain.Should().BeFalse();
        }
    }

    private static Intent WithoutButton(Intent intent) =>
        intent with
        {
            When = Expression.AllOf(
                ((All)intent.When).Terms.Where(t => t is not VariableIs { Variable: "S1" })
            ),
        };

    private static IEnumerable<string> Sets(Intent asked, HashSet<string> failures, int most)
    {
        var behaviour = new Behaviour(Panel().WithFailures(failures), new DiagramTable(), most);
        return new CutSets(behaviour)
            .Of(behaviour.Of(asked.When))
            .Select(set => string.Join(' ', set.Members.Select(m => m.Name).Order(StringComparer.Ordinal)));
    }

    private static Netlist Panel() => Described.Netlist(Described.Text("pressure-tank.panel"));
}
