using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class BehaviourTests
{
    [Fact]
    public void A_holding_contact_keeps_what_a_button_started()
    {
        var panel = Of(Boards.ThreeWire());

        panel.Space.Count(panel.Reachable).Should().Be(8);
        panel.Space.Count(panel.ReachableSettled).Should().Be(5);
        var story = panel.ShortestTo(
            panel.Table.And(panel.Of(Is("K1", "in")), panel.Of(Is("S1", "released")))
        )!;
        Told.By(panel, story).Should().Equal("S1=pressed", "K1=in", "S1=released");
        story.ThroughUncertain.Should().BeFalse();
    }

    [Fact]
    public void A_story_replays()
    {
        var panel = Of(Boards.ThreeWire());
        var story = panel.ShortestTo(panel.Of(All(Is("K1", "in"), Is("S0", "pressed"))))!;

        Told.By(panel, story).Should().Equal("S1=pressed", "K1=in", "S0=pressed");
        var state = panel.Rest.State;
        foreach (var step in story.Steps)
        {
            panel.Space.Holds(step.Move.Certain, state).Should().BeTrue();
            state = state.With(step.Move.Variable, step.Move.To);
            step.After.Should().Be(state);
        }
    }

    [Fact]
    public void Inputs_do_not_change_while_armatures_move()
    {
        var panel = Of(Boards.ThreeWire());

        // S0 and S1 would have to change between two moves of K1.
        var passing = panel.Of(All(Is("S0", "pressed"), Is("K1", "in")));
        panel.Table.Meet(passing, panel.ReachableSettled).Should().BeFalse();
        panel.Table.Meet(passing, panel.Reachable).Should().BeTrue();
    }

    [Fact]
    public void Two_relays_that_lock_each_other_out_race()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Contact("L1", "c0", "S1", "on")
                .Contact("c0", "a", "KB", "out")
                .Contact("c0", "b", "KA", "out")
                .Coil("KA", "a", "N")
                .Coil("KB", "b", "N")
        );

        var raced = panel.Of(All(Is("S1", "on"), Is("KA", "out"), Is("KB", "out")));
        panel
            .Settling.Race.Should()
            .Be(panel.Table.Or(raced, panel.Of(All(Is("S1", "on"), Is("KA", "in"), Is("KB", "in")))));
        var done = panel.Operator.Operate(panel.Rest.State, new("S1", "on"));
        done.Raced.Should().BeTrue();
        panel.Space.Holds(panel.Of(All(Is("KA", "in"), Is("KB", "out"))), done.State).Should().BeTrue();
    }

    [Fact]
    public void A_relay_on_its_own_break_contact_buzzes()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Contact("L1", "c0", "S1", "on")
                .Contact("c0", "c1", "K1", "out")
                .Coil("K1", "c1", "N")
        );

        panel.Settling.Chatter.Should().Be(panel.Of(Is("S1", "on")));
        panel.Settling.Steady.Should().Be(panel.Of(All(Is("S1", "off"), Is("K1", "out"))));
        panel.Settling.Race.IsFalse.Should().BeTrue();
        panel.Operator.Operate(panel.Rest.State, new("S1", "on")).Chatters.Should().BeTrue();
    }

    [Fact]
    public void A_buzzer_that_another_relay_ends_buzzes_only_for_a_while()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Contact("L1", "c0", "S1", "on")
                .Contact("c0", "c1", "K2", "out")
                .Contact("c1", "c2", "K1", "out")
                .Coil("K1", "c2", "N")
                .Coil("K2", "c0", "N")
        );

        panel.Settling.Chatter.IsFalse.Should().BeTrue();
        panel.Settling.TransientChatter().Should().Be(panel.Of(All(Is("S1", "on"), Is("K2", "out"))));
    }

    [Fact]
    public void Buzzers_side_by_side_are_one_component_and_a_held_relay_beside_them_splits_it()
    {
        var board = new Board().Switch("S1", "off", "on").Contact("L1", "c0", "S1", "on");
        foreach (var i in Enumerable.Range(1, 6))
            board.Contact("c0", $"b{i}", $"B{i}", "out").Coil($"B{i}", $"b{i}", "N");
        foreach (var i in Enumerable.Range(1, 6))
            board
                .Button($"P{i}", ControlUse.Start)
                .Contact("L1", $"h{i}", $"P{i}", "pressed")
                .Contact("L1", $"h{i}", $"H{i}", "in")
                .Coil($"H{i}", $"h{i}", "N");
        var panel = Of(board);

        // Buttons pressed hold their relay in; the others stay either way.
        panel.Space.Count(panel.Settling.Chatter).Should().Be((1 << 6) * 729);
        panel.Settling.Race.IsFalse.Should().BeTrue();
    }

    [Fact]
    public void An_armature_held_off_by_its_interlock_is_blocked_and_settled()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Switch("S2", "off", "on")
                .Contact("L1", "a", "S1", "on")
                .Contact("L1", "b", "S2", "on")
                .Coil("KA", "a", "N")
                .Coil("KB", "b", "N")
                .Interlock("KA-KB", new Not(All(Is("KA", "in"), Is("KB", "in"))))
        );

        panel.Table.Meet(panel.Of(All(Is("KA", "in"), Is("KB", "in"))), panel.Reachable).Should().BeFalse();
        var blocked = panel.Of(All(Is("S2", "on"), Is("KA", "in"), Is("KB", "out")));
        panel.Blocked(panel.Space.IndexOf("KB")).Should().Be(blocked);
        var held = panel.Table.And(blocked, panel.Of(Is("S1", "on")));
        panel.Table.Entails(held, panel.Settling.Steady).Should().BeTrue();
        panel.Table.Meet(held, panel.ReachableSettled).Should().BeTrue();
    }

    [Fact]
    public void A_selector_passes_its_positions_one_by_one_and_breaks_before_it_makes()
    {
        var panel = Of(
            new Board()
                .Variable(
                    "S1",
                    VariableKind.Position,
                    "OFF",
                    "HAND",
                    "AUTO",
                    "OFF>HAND",
                    "HAND>OFF",
                    "OFF>AUTO",
                    "AUTO>OFF"
                )
                .Moves("OFF", "OFF>HAND", Mover.Operator)
                .Moves("OFF>HAND", "HAND", Mover.Settle)
                .Moves("HAND", "HAND>OFF", Mover.Operator)
                .Moves("HAND>OFF", "OFF", Mover.Settle)
                .Moves("OFF", "OFF>AUTO", Mover.Operator)
                .Moves("OFF>AUTO", "AUTO", Mover.Settle)
                .Moves("AUTO", "AUTO>OFF", Mover.Operator)
                .Moves("AUTO>OFF", "OFF", Mover.Settle)
        );

        var hand = panel.Operator.Operate(panel.Rest.State, new("S1", "HAND")).State;
        var auto = panel.Operator.Operate(hand, new("S1", "AUTO"));
        auto.Refusal.Should().BeNull();
        auto.Steps.Select(s => panel.Space.Variables[0].Values[s.After[0]])
            .Should()
            .Equal("HAND>OFF", "OFF", "OFF>AUTO", "AUTO");
        panel.Space.Count(panel.Settling.Settled).Should().Be(3);
    }

    [Fact]
    public void A_trip_stays_until_it_is_reset()
    {
        var panel = Of(
            Boards
                .TwoWire(new Board().Contact("L1", "L1.f", "F3", "ready"))
                .Element("F3.heater", ElementType.Thermal, "u1", "u1.m", Expression.True, "F3")
                .Element("heater", ElementType.Load, "u1.m", "N", Expression.True)
                .Variable("F3", VariableKind.Trip, "ready", "tripped")
                .Moves("ready", "tripped", Mover.Trip, new Carries("F3.heater"))
                .Moves("tripped", "ready", Mover.Operator)
        );

        var tripped = panel.ShortestTo(panel.Of(Is("F3", "tripped")))!;
        Told.By(panel, tripped).Should().Equal("S1=on", "K1=in", "F3=tripped");
        Told.By(
                panel,
                panel.ShortestTo(panel.Of(All(Is("F3", "tripped"), Is("S1", "off"), Is("K1", "out"))))!
            )
            .Should()
            .Equal("S1=on", "K1=in", "F3=tripped", "S1=off", "K1=out");
        panel.Operator.Operate(panel.Rest.State, new("F3", "tripped")).Refusal.Should().Be(Refusal.NotNow);
    }

    [Fact]
    public void Of_two_delays_either_may_elapse_first()
    {
        var board = new Board().Switch("S1", "off", "on").Contact("L1", "c", "S1", "on");
        foreach (var timer in (string[])["T1", "T2"])
            board
                .Variable(timer, VariableKind.Timer, "idle", "elapsed")
                .Moves("idle", "elapsed", Mover.Delay, Energised("c", "N"))
                .Moves("elapsed", "idle", Mover.Settle, Expression.Negate(Energised("c", "N")));
        var panel = Of(board);

        foreach (var (first, second) in new[] { ("T1", "T2"), ("T2", "T1") })
            panel
                .Table.Meet(panel.Of(All(Is(first, "elapsed"), Is(second, "idle"))), panel.ReachableSettled)
                .Should()
                .BeTrue();
        panel
            .Quiet.Should()
            .Be(
                panel.Table.And(
                    panel.Settling.Settled,
                    panel.Of(Any(Is("S1", "off"), All(Is("T1", "elapsed"), Is("T2", "elapsed"))))
                )
            );
    }

    [Fact]
    public void Powered_leaves_open_what_stands_by_and_what_a_key_forbids()
    {
        var panel = Of(
            new Board()
                .Switch("Q1", "open", "closed")
                .Switch("Q2", "open", "closed")
                .Switch("Q3", "open", "closed")
                .Last(v => v with { Standby = true })
                .Interlock("key", new Not(All(Is("Q1", "closed"), Is("Q2", "closed"))))
                .Power("Q1", "closed")
                .Power("Q2", "closed")
                .Power("Q3", "closed")
        );

        panel.Powering.Select(o => o.Refusal).Should().Equal(null, Refusal.Interlocked);
        panel.Powered.Values.Should().Equal(1, 0, 0);
    }

    [Fact]
    public void Rest_names_the_interlocks_that_it_breaks()
    {
        var panel = Of(
            new Board()
                .Switch("Q1", "open", "closed")
                .Interlock("sound", Is("Q1", "open"))
                .Interlock("broken", Is("Q1", "closed"))
        );

        panel.BrokenAtRest.Select(c => c.Name).Should().Equal("broken");
    }

    [Fact]
    public void What_only_an_uncertain_coil_can_do_says_so()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Contact("L1", "a", "S1", "on")
                .Element("lamp", ElementType.Load, "a", "b", Expression.True)
                .Coil("K1", "b", "N", may: new Energised("b", "N", Grade.Loose, 50, null))
        );

        panel.UncertainVariables.Should().Equal(panel.Space.IndexOf("K1"));
        var story = panel.ShortestTo(panel.Of(Is("K1", "in")))!;
        Told.By(panel, story).Should().Equal("S1=on", "K1=in");
        story.ThroughUncertain.Should().BeTrue();
        panel.ShortestTo(panel.Of(All(Is("K1", "out"), Is("S1", "on"))))!.ThroughUncertain.Should().BeFalse();
    }

    private static Expression All(params Expression[] terms) => Expression.AllOf(terms);

    private static Expression Any(params Expression[] terms) => Expression.AnyOf(terms);

    private static Behaviour Of(Board board) => new(board.Build(), new DiagramTable());
}
