using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class StopTests
{
    private static readonly Operation[] S0 = [new("S0", "pressed")];

    [Fact]
    public void A_stop_ahead_of_the_holding_contact_stops_at_once() =>
        Stops(Boards.ThreeWire(), S0, atOnce: true).Outcome.Should().Be(Outcome.Proved);

    [Fact]
    public void A_holding_contact_past_the_stop_keeps_running()
    {
        var verdict = Stops(Boards.ThreeWire(holdsFrom: "L1"), S0);

        verdict.StopFailure.Should().Be(StopFailure.KeepsRunning);
        verdict
            .Story!.Steps.Select(s => s.Move.Cause)
            .Should()
            .Equal(Cause.Operator, Cause.Settle, Cause.Operator);
    }

    [Fact]
    public void What_follows_a_switch_runs_again_when_the_stop_is_let_go()
    {
        var board = new Board()
            .Button("S0", ControlUse.Stop)
            .Switch("B1", "low", "high")
            .Contact("L1", "c0", "S0", "released")
            .Contact("c0", "c1", "B1", "high")
            .Coil("K1", "c1", "N")
            .Poles("L", "u", "K1", "in")
            .Motor("M1", "u");

        var verdict = Stops(board, S0);

        verdict.StopFailure.Should().Be(StopFailure.RunsAgain);
        var end = verdict.Story!.End;
        end.Values.Should().Equal(0, 1, 1);
    }

    [Fact]
    public void A_master_relay_needs_a_new_start_command()
    {
        var board = new Board()
            .Button("S0", ControlUse.Stop)
            .Button("S3", ControlUse.Start)
            .Variable("B1", VariableKind.Process, "low", "high")
            .Moves("low", "high", Mover.Process)
            .Moves("high", "low", Mover.Process)
            .Contact("L1", "c0", "S0", "released")
            .Contact("c0", "c1", "S3", "pressed")
            .Contact("c0", "c1", "K0", "in")
            .Coil("K0", "c1", "N")
            .Contact("c0", "c2", "K0", "in")
            .Contact("c2", "c3", "B1", "high")
            .Coil("K1", "c3", "N")
            .Poles("L", "u", "K1", "in")
            .Motor("M1", "u");

        Stops(board, S0, atOnce: true).Outcome.Should().Be(Outcome.Proved);
    }

    [Fact]
    public void A_stop_that_acts_after_a_delay_is_none_at_once_and_may_be_let_go_too_soon()
    {
        var delayed = Energised("t", "N");
        Board Delayed(bool latching)
        {
            var board = latching
                ? new Board().Switch("S0", "released", "pressed", ControlUse.Mode)
                : new Board().Button("S0", ControlUse.Stop);
            return board
                .Button("S1", ControlUse.Start)
                .Contact("L1", "t", "S0", "pressed")
                .Variable("T1", VariableKind.Timer, "idle", "elapsed")
                .Moves("idle", "elapsed", Mover.Delay, delayed)
                .Moves("elapsed", "idle", Mover.Settle, Expression.Negate(delayed))
                .Contact("L1", "c1", "T1", "idle")
                .Contact("c1", "c2", "S1", "pressed")
                .Contact("c1", "c2", "K1", "in")
                .Coil("K1", "c2", "N")
                .Poles("L", "u", "K1", "in")
                .Motor("M1", "u");
        }

        Stops(Delayed(latching: true), S0).Outcome.Should().Be(Outcome.Proved);
        Stops(Delayed(latching: true), S0, atOnce: true).StopFailure.Should().Be(StopFailure.KeepsRunning);
        Stops(Delayed(latching: false), S0).StopFailure.Should().Be(StopFailure.RunsAgain);
    }

    [Fact]
    public void A_selector_that_a_key_holds_cannot_stop()
    {
        var board = Boards
            .TwoWire()
            .Switch("key", "free", "trapped")
            .Interlock("key", Expression.AnyOf(Is("key", "free"), Is("S1", "on")));

        Stops(board, [new("S1", "off")]).StopFailure.Should().Be(StopFailure.CannotBeOperated);
    }

    [Fact]
    public void A_load_that_never_runs_makes_its_stop_say_nothing() =>
        Stops(new Board().Button("S0", ControlUse.Stop).Motor("M1", "u"), S0)
            .Outcome.Should()
            .Be(Outcome.Vacuous);

    private static Verdict Stops(Board board, Operation[] by, bool atOnce = false) =>
        new Questions(new Behaviour(board.Build(), new DiagramTable())).Stops("M1", by, atOnce);
}
