using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>What several searches come to together, and what names in questions stand for.</summary>
[Trait("Set", "engine")]
public class VerdictTests
{
    private static readonly Verdict Proved = new(Outcome.Proved);
    private static readonly Verdict Vacuous = new(Outcome.Vacuous);
    private static readonly Verdict Bounded = new(Outcome.Bounded);

    [Fact]
    public void What_no_part_shows_is_proved_unless_one_was_cut_short()
    {
        Verdict.OfParts(IntentForm.Never, [Vacuous, Proved]).Should().BeSameAs(Proved);
        Verdict.OfParts(IntentForm.Never, [Proved, Bounded, Vacuous]).Should().BeSameAs(Bounded);
        Verdict.OfParts(IntentForm.Never, [Vacuous, Vacuous]).Outcome.Should().Be(Outcome.Vacuous);
    }

    [Fact]
    public void What_one_part_shows_is_so_with_the_shortest_sure_story()
    {
        var behaviour = new Behaviour(Boards.ThreeWire().Build(), new DiagramTable());
        Verdict Shown(Outcome outcome, Expression when, bool open = false) =>
            new(outcome)
            {
                Story = behaviour.ShortestTo(behaviour.Of(when))! with { ThroughUncertain = open },
            };
        var pressed = Shown(Outcome.Refuted, Is("S1", "pressed"));
        var pulled = Shown(Outcome.Refuted, Is("K1", "in"));
        var held = Shown(Outcome.Refuted, Expression.AllOf(Is("K1", "in"), Is("S1", "released")));
        var open = Shown(Outcome.Refuted, Is("S1", "pressed"), open: true);

        Verdict.OfParts(IntentForm.Never, [Bounded, held, pulled, pressed]).Should().BeSameAs(pressed);
        Verdict.OfParts(IntentForm.Never, [held, pulled, Proved]).Should().BeSameAs(pulled);
        Verdict.OfParts(IntentForm.Never, [open, held]).Should().BeSameAs(held);
        Verdict.OfParts(IntentForm.Never, [open, Proved]).ThroughUncertain.Should().BeTrue();
        var can = Shown(Outcome.Proved, Is("K1", "in"));
        Verdict.OfParts(IntentForm.Can, [new(Outcome.Refuted), can]).Should().BeSameAs(can);
        Verdict.OfParts(IntentForm.Can, [new(Outcome.Refuted), Bounded]).Should().BeSameAs(Bounded);
    }

    [Fact]
    public void A_line_that_allows_more_failures_than_are_searched_holds_only_with_a_witness()
    {
        var questions = new Questions(new Behaviour(Boards.TwoWire().Build(), new DiagramTable()));
        var never = new Intent
        {
            Form = IntentForm.Never,
            When = Is("K1", "in"),
            Failures = 1,
        };

        questions.Answer(never).Outcome.Should().Be(Outcome.Refuted);
        questions
            .Answer(never with { When = Expression.AllOf(Is("K1", "in"), Is("S1", "off")), Settled = true })
            .Outcome.Should()
            .Be(Outcome.Bounded);
        questions
            .Answer(
                never with
                {
                    When = Expression.AllOf(Is("K1", "in"), Is("S1", "off")),
                    Settled = true,
                    Failures = 0,
                }
            )
            .Outcome.Should()
            .Be(Outcome.Proved);
    }

    [Fact]
    public void A_name_is_a_load_or_a_device_with_loads()
    {
        var netlist = Boards.ThreeWire().Build();
        var load = netlist.Loads.Single();
        var device = netlist.Elements.First(e => load.Elements.Contains(e.Id)).Device;

        Terminals.LoadsOf(netlist, load.Name).Should().Equal(load);
        Terminals.LoadsOf(netlist, device).Should().Equal(load);
        Terminals.Of(netlist, load.Name).Should().StartWith(load.Terminals).And.OnlyHaveUniqueItems();
        Terminals.Of(netlist, "K1").Should().Contain("N").And.OnlyHaveUniqueItems();
        var loads = () => Terminals.LoadsOf(netlist, "nobody");
        var nets = () => Terminals.Of(netlist, "nobody");
        loads.Should().Throw<ArgumentException>();
        nets.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void A_condition_names_the_variables_of_all_its_parts()
    {
        var condition = Expression.AllOf(
            Is("A", "x"),
            new Not(Expression.AnyOf(Is("B", "y"), Is("A", "z"))),
            new Live("n")
        );
        Freedom.NamedIn(condition).Should().Equal("A", "B");
    }
}
