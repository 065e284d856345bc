using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using static Coldpath.Tests.Circuit.Sequence.Board;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class ShortCircuitTests
{
    [Fact]
    public void A_fuse_clears_the_short_that_it_carries()
    {
        var panel = Of(Shorting(fuse: true));

        var done = panel.Operator.Operate(panel.Rest.State, new("S1", "on"));
        done.Steps[^1].Move.Cause.Should().Be(Cause.Short);
        panel.Space.Holds(panel.Of(Is("F1", "blown")), done.State).Should().BeTrue();
        panel.UnprotectedShort.IsFalse.Should().BeTrue();
        panel.Table.Meet(panel.Shorted, panel.ReachableSettled).Should().BeFalse();
        panel.Table.Meet(panel.LastingShort, panel.Reachable).Should().BeTrue();
    }

    [Fact]
    public void Without_a_device_in_the_way_a_short_is_unprotected_and_stands()
    {
        var panel = Of(Shorting(fuse: false));

        panel.UnprotectedShort.Should().Be(panel.Of(Is("S1", "on")));
        panel.Table.Meet(panel.Shorted, panel.ReachableSettled).Should().BeTrue();
    }

    [Fact]
    public void While_a_short_stands_what_it_feeds_may_drop_but_does_not_pull()
    {
        var panel = Of(
            Shorting(fuse: true)
                .Switch("S2", "off", "on")
                .Contact("L2", "h", "S2", "on")
                .Coil("K2", "h", "N")
                .Contact("L2", "p", "S1", "on")
                .Coil("K3", "p", "N")
        );

        Expression held = Expression.AllOf(Is("S1", "on"), Is("F1", "whole"), Is("S2", "on"));
        panel.ShortestTo(panel.Of(Expression.AllOf(held, Is("K2", "out")))).Should().NotBeNull();
        panel.ShortestTo(panel.Of(Expression.AllOf(held, Is("K2", "in")))).Should().NotBeNull();
        var pulled = panel.ShortestTo(panel.Of(Expression.AllOf(Is("F1", "whole"), Is("K3", "in"))))!;
        Told.By(panel, pulled).Should().Equal("S1=on", "F1=blown", "K3=in", "F1=whole");
    }

    [Fact]
    public void An_unprotected_short_leaves_pulls_open_either_way()
    {
        var panel = Of(Shorting(fuse: false).Contact("L2", "p", "S1", "on").Coil("K3", "p", "N"));

        foreach (var position in (string[])["out", "in"])
            panel
                .Table.Meet(
                    panel.Of(Expression.AllOf(Is("S1", "on"), Is("K3", position))),
                    panel.ReachableSettled
                )
                .Should()
                .BeTrue();
        panel.RestsOnUncertain.Should().BeFalse();
    }

    [Fact]
    public void A_supply_that_cannot_deliver_its_short_need_not_operate_the_device()
    {
        var generator = ThreePhase("GEN", "G1", "G2", "G3") with { Limited = true };
        var panel = Of(
            new Board()
                .Supply(generator)
                .Switch("S1", "off", "on")
                .Fuse("F1", "G1", "a")
                .Contact("a", "G2", "S1", "on")
        );

        var shorted = panel.Of(Expression.AllOf(Is("S1", "on"), Is("F1", "whole")));
        panel.Shorted.Should().Be(shorted);
        panel.Table.Entails(shorted, panel.Settling.Steady).Should().BeTrue();
        panel.Table.Meet(panel.Of(Is("F1", "blown")), panel.Reachable).Should().BeTrue();
    }

    [Fact]
    public void Any_one_of_the_fuses_in_the_way_may_blow_first()
    {
        var panel = Of(
            new Board()
                .Switch("S1", "off", "on")
                .Fuse("F1", "L1", "a")
                .Fuse("F2", "L2", "b")
                .Contact("a", "b", "S1", "on")
        );

        foreach (var (blown, whole) in new[] { ("F1", "F2"), ("F2", "F1") })
            panel
                .Table.Meet(
                    panel.Of(Expression.AllOf(Is(blown, "blown"), Is(whole, "whole"))),
                    panel.ReachableSettled
                )
                .Should()
                .BeTrue();
        panel
            .Table.Meet(
                panel.Of(Expression.AllOf(Is("F1", "blown"), Is("F2", "blown"), Is("S1", "on"))),
                panel.Reachable
            )
            .Should()
            .BeFalse();
        panel.Settling.Race.IsFalse.Should().BeTrue("which fuse is first is no race of armatures");
    }

    /// <summary>Reversing starter: textbook behaviour, recomputed by brute force.</summary>
    [Theory]
    [InlineData(true, true, false, false)]
    [InlineData(true, false, true, false)]
    [InlineData(false, true, true, false)]
    [InlineData(false, false, true, true)]
    public void A_reversing_starter_is_sound_only_with_both_interlocks(
        bool forward,
        bool reverse,
        bool overlaps,
        bool lasts
    )
    {
        var panel = Of(Boards.Reversing(forward, reverse));

        var both = panel.Of(Expression.AllOf(Is("K1", "in"), Is("K2", "in")));
        panel.Table.Meet(both, panel.Reachable).Should().Be(overlaps);
        panel.Table.Meet(panel.Shorted, panel.Reachable).Should().Be(overlaps);
        panel.Table.Meet(panel.LastingShort, panel.Reachable).Should().Be(lasts);
        if (overlaps)
            panel.ShortestTo(both)!.Steps.Count(s => s.Move.Cause == Cause.Operator).Should().BeInRange(1, 3);
    }

    /// <summary>Wye-delta starter (textbook, recomputed): star and delta together short all three pairs of phases.</summary>
    [Fact]
    public void Star_and_delta_together_are_a_short_and_neither_is_with_the_line_contactor()
    {
        var board = new Board()
            .Switch("KM", "out", "in")
            .Switch("KD", "out", "in")
            .Switch("KS", "out", "in")
            .Poles("L", "t", "KM", "in");
        foreach (var (line, terminal) in new[] { ("L1", "t6"), ("L2", "t4"), ("L3", "t5") })
            board.Contact(line, terminal, "KD", "in", power: true);
        board.Contact("t4", "t5", "KS", "in", power: true).Contact("t5", "t6", "KS", "in", power: true);
        foreach (var (a, b) in new[] { ("t1", "t4"), ("t2", "t5"), ("t3", "t6") })
            board.Element($"M1.{a}-{b}", ElementType.Load, a, b, Expression.True, "M1");
        var panel = Of(board);

        panel.Shorted.Should().Be(panel.Of(Expression.AllOf(Is("KD", "in"), Is("KS", "in"))));
        var together = panel.Of(Expression.AllOf(Is("KD", "in"), Is("KS", "in")));
        foreach (var (a, b) in new[] { ("L1", "L2"), ("L2", "L3"), ("L1", "L3") })
            panel.Of(new Joined(a, b)).Should().Be(together);
    }

    private static Board Shorting(bool fuse)
    {
        var board = new Board().Switch("S1", "off", "on");
        return (
            fuse
                ? board.Fuse("F1", "L1", "a")
                : board.Element("wire", ElementType.Conductor, "L1", "a", Expression.True)
        ).Contact("a", "N", "S1", "on");
    }

    private static Behaviour Of(Board board) => new(board.Build(), new DiagramTable());
}
