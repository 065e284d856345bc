using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class QuestionTests
{
    [Fact]
    public void Never_counts_passing_states_unless_settled_is_said()
    {
        var questions = Of(Boards.Reversing(interlockAtForward: true, interlockAtReverse: false));
        var both = Expression.AllOf(Is("K1", "in"), Is("K2", "in"));

        questions.Never(both).Outcome.Should().Be(Outcome.Refuted);
        questions.Never(both, settled: true).Outcome.Should().Be(Outcome.Proved);
    }

    [Fact]
    public void Never_says_nothing_of_what_cannot_come_alone()
    {
        var questions = Of(Boards.ThreeWire().Coil("K2", "nowhere", "N"));

        questions
            .Never(Expression.AllOf(Is("K1", "in"), Is("K2", "in")))
            .Outcome.Should()
            .Be(Outcome.Vacuous);
        questions.Never(Is("K2", "in")).Outcome.Should().Be(Outcome.Proved);
    }

    [Fact]
    public void A_way_is_one_that_the_load_cannot_do_without()
    {
        var questions = Of(
            Boards.TwoWire().Switch("K3", "out", "in").Poles("L", "u", "K3", "in").Switch("K4", "out", "in")
        );

        questions.Can("M1", "K1").Outcome.Should().Be(Outcome.Proved);
        questions.Can("M1", "K3").Story!.Steps.Should().HaveCount(1);
        questions.Can("M1", "K4").Outcome.Should().Be(Outcome.Refuted);
    }

    [Fact]
    public void Dead_asks_every_assignment_and_lets_contacts_weld()
    {
        var isolated = new Board()
            .Switch("Q2", "closed", "open")
            .Poles("L", "m", "Q2", "closed")
            .Switch("S1", "off", "on")
            .Poles("m", "u", "S1", "on")
            .Motor("M1", "u");
        Of(isolated).Dead("M1", Is("Q2", "open")).Outcome.Should().Be(Outcome.Proved);
        Of(isolated).Dead("M1", Is("S1", "off")).Outcome.Should().Be(Outcome.Proved);

        var welding = new Board()
            .Switch("S1", "off", "on")
            .Variable("S1.weld", VariableKind.Failure, "no", "yes")
            .Last(v => v with { Class = FailureClass.Contact })
            .Element(
                "S1.1",
                ElementType.Contact,
                "L1",
                "u1",
                Expression.AnyOf(Is("S1", "on"), Is("S1.weld", "yes"))
            )
            .Motor("M1", "u");
        var verdict = Of(welding).Dead("M1", Is("S1", "off"));
        verdict.Outcome.Should().Be(Outcome.Refuted);
        verdict.LiveNets.Should().Equal("u1", "u2", "u3", "M1.star");
        verdict.Assignment!.Values.Should().Equal(0, 1);
        Of(welding)
            .Dead("M1", Expression.AllOf(Is("S1", "off"), new Not(new Closed("S1.1"))))
            .Outcome.Should()
            .Be(Outcome.Proved);
    }

    [Fact]
    public void A_spent_budget_proves_nothing()
    {
        var netlist = Boards.Reversing(true, true).Build();
        var needed = new DiagramTable();
        var behaviour = new Behaviour(netlist, needed);
        _ = behaviour.Settling;
        var scarce = new Behaviour(netlist, new DiagramTable(budget: needed.NodesMade + 10));

        new Questions(scarce).Never(Is("K1", "in")).Outcome.Should().Be(Outcome.Bounded);
    }

    private static Questions Of(Board board) => new(new Behaviour(board.Build(), new DiagramTable()));
}
