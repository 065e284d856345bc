using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings.Control;

/// <summary>Rungs that few panels have, each of which was once drawn wrong.</summary>
public class LadderCornerTests
{
    private const string Header = """
        panel "Test"
          rules   IEC
          system  400 V 3-phase 50 Hz, TN-S
        control supply       G2    24 V DC
        overload relay       F2    class 10, set 11 A
        relay                K3 and K4 coil 24 V DC
        push button          S2 and S3
        lamp                 P1 and P2 red "running"
        terminal strip       X1
        G2:L+ -> rail 1
        G2:L- -> rail 2

        """;

    [Fact]
    public void An_earthed_terminal_refers_to_the_other_pieces_of_its_net() =>
        ShouldBeDrawn(
            """
            rung 1 X1:6 -> PE
            wire 203: X1:5, X1:6
            """
        );

    [Fact]
    public void The_earth_in_a_rung_joins_nothing() => ShouldBeDrawn("rung 1 1 -> S2 -> PE -> S3 -> 2");

    [Fact]
    public void Each_branch_behind_the_earth_has_a_wire_of_its_own() =>
        ShouldBeDrawn("rung 1 PE -> ( coil K3 | X1:3 -> S2 | ( P1 | S3 ) ) -> P2 -> 2");

    [Theory]
    [InlineData("S2 -> PE | S3")]
    [InlineData("S3 | S2 -> PE")]
    [InlineData("PE | S3")]
    [InlineData("S2 | PE -> ( S3 | P1 )")]
    public void The_earth_in_a_branch_joins_nothing(string branches) =>
        ShouldBeDrawn($"rung 1 1 -> ( {branches} ) -> coil K3 -> 2");

    [Fact]
    public void An_earthed_terminal_in_no_rung_refers_to_the_rung_that_names_its_net() =>
        ShouldBeDrawn(
            """
            rung 1 PE -> node 102
            rung 2 1 -> X1:1 -> P1 -> 2
            wire 200: node 102, X1:2
            """
        );

    private static void ShouldBeDrawn(string rungs)
    {
        foreach (
            var (width, height) in new[]
            {
                (double.PositiveInfinity, double.PositiveInfinity),
                (277, 170),
                (180, 240),
            }
        )
            DrawnLadder.Of(Header + rungs, width, height).Faults().Should().BeEmpty();
    }
}
