using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

public class ChainTests
{
    private const string Power = """
        disconnect Q1
        block XD1
        fuse F1 three-pole
        fuse F2 three-pole
        contactor K1
        contactor K3
        overload F3
        motor M1

        """;

    [Fact]
    public void A_chain_joins_pole_by_pole_from_line_side_to_load_side()
    {
        var (_, netlist) = Bound.Good(Power + "MAINS -> Q1 -> XD1 -> ( F1 -> K1 | F2 -> K3 -> F3 ) -> M1\n");
        netlist.ShouldJoin("MAINS:L2", "Q1:3/L2");
        netlist.ShouldJoin("Q1:4/T2", "XD1:L2", "F1:3", "F2:3");
        netlist.ShouldJoin("K1:4/T2", "F3:4/T2", "M1:V");
        netlist.ShouldJoin("F2:4", "K3:3/L2");
        netlist.ShouldPart("M1:U", "M1:V", "M1:W", "MAINS:L1", "Q1:2/T1", "F1:2", "F2:2", "MAINS:N", "XD1:N");
    }

    [Fact]
    public void Neutral_joins_only_where_it_is_named()
    {
        var (_, netlist) = Bound.Good(
            """
            four Q1
            four Q2
            block XD1
            MAINS[L1, L2, L3, N] -> Q1 -> XD1
            MAINS -> Q2
            """
        );
        netlist.ShouldJoin("MAINS:N", "Q1:7/N");
        netlist.ShouldJoin("Q1:8/N", "XD1:N");
        netlist.ShouldPart("MAINS:N", "Q2:7/N");
    }

    [Fact]
    public void A_neutral_on_a_phase_is_refused()
    {
        var result = Bound.Any("four Q1\nMAINS[N, L1, L2, L3] -> Q1\n");
        result.Findings.Should().ContainSingle().Which.Name.Should().Be("neutral-misplaced");
    }

    [Fact]
    public void Brackets_narrow_by_marking_and_by_the_conductor_that_arrives()
    {
        // The taps stand before the chain that brings the conductors: the order of lines does not matter.
        var (_, netlist) = Bound.Good(
            Power
                + """
                fuse F10
                fuse F11
                F1[L2] -> F11
                Q1[L3] -> F10
                MAINS -> Q1 -> F1 -> K1
                """
        );
        netlist.ShouldJoin("F1:4", "F11:1");
        netlist.ShouldJoin("Q1:6/T3", "F10:1");
    }

    [Fact]
    public void A_number_in_brackets_is_that_terminal_even_on_the_line_side()
    {
        var (_, netlist) = Bound.Good(Power + "fuse F10\nMAINS -> Q1\nQ1[1] -> F10\n");
        netlist.ShouldJoin("F10:1", "Q1:1/L1", "MAINS:L1");
    }

    [Fact]
    public void Crossed_phases_are_crossed_on_the_side_that_is_named()
    {
        var (_, netlist) = Bound.Good(Power + "MAINS -> ( K1 | K3[L3, L2, L1] ) -> F3 -> M1[V, U, W]\n");
        netlist.ShouldJoin("MAINS:L1", "K1:1/L1", "K3:5/L3");
        netlist.ShouldJoin("K1:2/T1", "K3:2/T1", "F3:1/L1");
        netlist.ShouldJoin("F3:2/T1", "M1:V");
        netlist.ShouldJoin("F3:4/T2", "M1:U");
    }

    [Fact]
    public void A_conductor_name_that_a_crossing_made_doubtful_is_refused()
    {
        var result = Bound.Any(Power + "fuse F10\nMAINS[L3, L2, L1] -> K1\nK1[L1] -> F10\n");
        result.Findings.Should().ContainSingle().Which.Name.Should().Be("ambiguous-terminal");
    }

    [Fact]
    public void Groups_may_begin_and_end_a_chain()
    {
        var (_, netlist) = Bound.Good(Power + "MAINS -> ( Q1 | K3 )\n( Q1 | K3 ) -> ( M1 | F3 )\n");
        netlist.ShouldJoin("MAINS:L1", "Q1:1/L1", "K3:1/L1");
        netlist.ShouldJoin("Q1:2/T1", "K3:2/T1", "M1:U", "F3:1/L1");
    }

    [Fact]
    public void Terminals_may_be_strung_together()
    {
        var (_, netlist) = Bound.Good(Power + "K3:2/T1 -> K3:4/T2 -> K3:6/T3\n");
        netlist.ShouldJoin("K3:2/T1", "K3:4/T2", "K3:6/T3");
    }

    [Fact]
    public void Widths_must_match_and_the_finding_names_both_sides()
    {
        var finding = Bound
            .Any(Power + "fuse F10\nMAINS -> Q1 -> F10\n")
            .Findings.Should()
            .ContainSingle()
            .Subject;
        finding.Name.Should().Be("widths-differ");
        finding.Message.Should().Be("Q1 brings 3 conductors (L1, L2, L3), but F10 takes 1 conductor (1)");
        finding.Location.Text.Should().Be("F10");
        finding.Related.Should().ContainSingle().Which.Span.Text.Should().Be("Q1");
    }

    [Theory]
    [InlineData("MAINS -> K1 -> Q1 -> K1", "")]
    [InlineData("MAINS -> Q1 -> K1 -> Q1 -> M1", "Q1")]
    [InlineData("MAINS -> ( Q1 | K1 -> Q1 ) -> M1", "Q1")]
    public void Passing_a_pole_twice_in_one_chain_is_refused(string chain, string twice)
    {
        var findings = Bound.Any(Power + chain + "\n").Findings;
        var passed = findings.Where(f => f.Name == "passed-twice").SelectMany(f => f.Devices);
        passed.Should().Equal(twice.Length == 0 ? [] : [twice]);
    }

    [Fact]
    public void Wires_join_terminals_and_name_the_net()
    {
        var (panel, netlist) = Bound.Good(Power + "strip X1\nwire 104: F1:2, K1:1, X1:4\n104 -> M1:U\n");
        netlist.ShouldJoin("F1:2", "K1:1/L1", "X1:4", "M1:U", "104");
        netlist.NetOf("X1:4").Should().Be("104");
        panel.PointsOf("104").Should().Equal("104", "F1:2", "K1:1/L1", "M1:U", "X1:4");
    }

    [Fact]
    public void Earth_is_reached_through_a_conductor_that_can_break()
    {
        var (panel, netlist) = Bound.Good("block XD1\nMAINS[N] -> XD1[N] -> PE\n");
        var bond = netlist.Elements.Single(e => e.Id == "XD1:N-PE");
        bond.Should().Match<Element>(e => e.A == "MAINS:N" && e.B == "PE" && e.Device == "XD1");
        netlist
            .Variables.Should()
            .Contain(v => v.Name == "XD1:N-PE broken" && v.Kind == VariableKind.Failure);
        panel.Bonds.Should().ContainSingle();
        netlist.NetOf("MAINS:N").Should().NotBe("PE");
    }

    [Theory]
    [InlineData("X1:1 -> PE | X1:2")]
    [InlineData("X1:2 | X1:1 -> PE")]
    public void Branches_join_whichever_of_them_ends_at_the_earth(string branches)
    {
        var (panel, netlist) = Bound.Good($"strip X1\n( {branches} ) -> X1:3\n");
        netlist.ShouldJoin("X1:2", "X1:3");
        netlist.NetOf("X1:1").Should().NotBe(netlist.NetOf("X1:3"));
        panel.Bonds.Should().HaveCount(2);
    }

    [Fact]
    public void Unconnected_terminals_are_known()
    {
        var (panel, _) = Bound.Good(Power + "MAINS -> Q1 -> F3 -> M1\n");
        panel
            .UnconnectedTerminals()
            .Select(t => t.ToString())
            .Should()
            .Contain("K1:A1")
            .And.NotContain("Q1:1/L1");
    }
}
