using Coldpath.Notation.Syntax;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

/// <summary>What the lines of a panel become.</summary>
public class SyntaxTests
{
    [Theory]
    [InlineData("control transformer T1 480 V", "control transformer", "T1")]
    [InlineData("fuse F10 and F11 2 A", "fuse", "F10 F11")]
    [InlineData("contactor never 140 A", "contactor", "never")]
    [InlineData("contactor panel 140 A", "contactor", "panel")]
    [InlineData("lamp left and right \"run\"", "lamp", "left right")]
    [InlineData("relay -K1, coil 24 V DC", "relay", "-K1")]
    [InlineData("relay =A1+B2-K1", "relay", "=A1+B2-K1")]
    [InlineData("distribution block XD1", "distribution block", "XD1")]
    public void A_declaration_has_a_kind_and_tags(string text, string kind, string tags)
    {
        var declaration = Read.One<DeclarationSyntax>(text);
        declaration.KindName.Should().Be(kind);
        string.Join(' ', declaration.Tags).Should().Be(tags);
    }

    [Theory]
    [InlineData("480 V", 480, null, "V")]
    [InlineData("480V", 480, null, "V")]
    [InlineData("24 V DC", 24, null, "V DC")]
    [InlineData("24V DC", 24, null, "V DC")]
    [InlineData("480Y/277 V", 480, 277.0, "V")]
    [InlineData("480Y/277V", 480, 277.0, "V")]
    [InlineData("230/400 V", 230, 400.0, "V")]
    [InlineData("6 AWG", 6, null, "AWG")]
    [InlineData("1/0 AWG", 0, null, "AWG")]
    [InlineData("4/0 AWG", -3, null, "AWG")]
    [InlineData("35 mm2", 35, null, "mm2")]
    [InlineData("1.5kW", 1.5, null, "kW")]
    [InlineData("85 %", 85, null, "%")]
    [InlineData("85%", 85, null, "%")]
    [InlineData("5\u00A0ohm", 5, null, "ohm")]
    public void Number_and_unit_are_one(string text, double value, double? second, string unit)
    {
        var atom = (QuantityAtom)Read.One<DeclarationSyntax>("motor M1 " + text).Atoms.Single();
        (atom.Value, atom.Second, atom.Unit).Should().Be((value, second, unit));
        atom.Span.Text.Should().Be(text);
    }

    [Fact]
    public void Ratings_are_a_flat_row()
    {
        var atoms = Read.One<DeclarationSyntax>(
            "selector S1 HAND | OFF | 3, interlocked with K1 and K2, \"x\""
        ).Atoms;
        atoms
            .Select(a => a.GetType().Name.Replace("Atom", ""))
            .Should()
            .Equal("Word Bar Word Bar Number Comma Word Word Word And Word Comma Text".Split(' '));
    }

    [Theory]
    [InlineData("never -> panel", "never", "panel")]
    [InlineData("rung -> rung", "rung", "rung")]
    [InlineData("wire[1, 2] -> seen:1", "wire[1, 2]", "seen:1")]
    [InlineData("K1->K2", "K1", "K2")]
    [InlineData("L-->M1:-", "L-", "M1:-")]
    [InlineData("T1:L-->K2", "T1:L-", "K2")]
    [InlineData("rail L+ -> =A1+B2-Q1:2/T1", "rail L+", "=A1+B2-Q1:2/T1")]
    [InlineData("S1 at HAND or AUTO -> 100", "S1 at HAND or AUTO", "100")]
    [InlineData("NC U1 trip:95-96 -> rail +24", "NC U1 trip:95-96", "rail +24")]
    public void Names_in_chains(string text, string first, string last)
    {
        var steps = Read.One<ChainSyntax>(text).Steps;
        steps.Select(s => s.Span.Text).Should().Equal(first, last);
    }

    [Fact]
    public void A_rung_has_a_number_and_a_first_node_that_may_be_one_too()
    {
        var rung = Read.One<ChainSyntax>("rung 2 100 -> ( S3 | NO K0 -> K1:13-14 ) -> coil K0 -> 2");
        rung.Rung!.Text.Should().Be("2");
        rung.Steps[0].Should().BeOfType<RefSyntax>().Which.Name.Should().Be("100");
        var group = rung.Steps[1].Should().BeOfType<GroupSyntax>().Subject;
        group.Branches.Select(b => b.Steps.Count).Should().Equal(1, 2);
        var contact = (RefSyntax)group.Branches[1].Steps[1];
        contact.Terminals!.Names.Single().Text.Should().Be("13-14");
        contact.Terminals.InBrackets.Should().BeFalse();
    }

    [Fact]
    public void A_wire_is_not_a_terminal_of_a_device()
    {
        var wire = Read.One<WireSyntax>("wire 104: F10:2, S0:11,\n  X1:4");
        wire.Number.Text.Should().Be("104");
        wire.Ends.Select(e => e.Span.Text).Should().Equal("F10:2", "S0:11", "X1:4");
    }

    [Fact]
    public void Names_that_share_a_state_become_a_term_each()
    {
        var condition = Read.One<NeverSyntax>("never K1 and K2 and K3 closed and S1 at HAND").What;
        var terms = condition.Should().BeOfType<AndSyntax>().Which.Terms.Cast<StateSyntax>();
        terms
            .Select(t => $"{t.Subject.Name}={t.State}")
            .Should()
            .Equal("K1=closed", "K2=closed", "K3=closed", "S1=at HAND");
    }

    [Theory]
    [InlineData("never K1 closed", "K1", "closed")]
    [InlineData("never U1 full speed", "U1", "full speed")]
    [InlineData("never mode at HAND", "mode", "at HAND")]
    [InlineData("never never closed", "never", "closed")]
    [InlineData("never M1 runs forward", "M1", "runs forward")]
    [InlineData("never coil K1 energised", "coil K1", "energised")]
    public void A_condition_parts_name_and_state(string text, string subject, string state)
    {
        var term = Read.One<NeverSyntax>(text).What.Should().BeOfType<StateSyntax>().Subject;
        (term.Subject.Name, term.State).Should().Be((subject, state));
    }

    [Fact]
    public void Brackets_and_not_show_in_the_nesting()
    {
        var condition = Read.One<NeverSyntax>(
            "never (K1 or K2 closed) and not (M1:U live or S1 at OFF)"
        ).What;
        var terms = ((AndSyntax)condition).Terms;
        terms[0].Should().BeOfType<OrSyntax>().Which.Terms.Should().HaveCount(2);
        var inner = terms[1].Should().BeOfType<NotSyntax>().Which.Term.Should().BeOfType<OrSyntax>().Subject;
        inner
            .Terms[0]
            .Should()
            .BeOfType<StateSyntax>()
            .Which.Subject.Terminals!.Names[0]
            .Text.Should()
            .Be("U");
    }

    [Theory]
    [InlineData("never K1 closed, when settled", StatesMeant.Settled, null)]
    [InlineData("never K1 closed, when quiet", StatesMeant.Quiet, null)]
    [InlineData("never K1 closed when settled even with 2 failures", StatesMeant.Settled, 2)]
    [InlineData("never K1 closed, even with 1 failure", StatesMeant.Any, 1)]
    public void An_intent_may_be_narrowed(string text, StatesMeant meant, int? failures)
    {
        var never = Read.One<NeverSyntax>(text);
        (never.When, never.Failures).Should().Be((meant, failures));
    }

    [Fact]
    public void A_stop_may_have_to_act_at_once()
    {
        Read.One<StopsSyntax>("stops M1 by S1 at once").AtOnce.Should().BeTrue();
        Read.One<StopsSyntax>("stops M1 by S1").AtOnce.Should().BeFalse();
    }

    [Fact]
    public void Spans_are_those_of_the_words()
    {
        var text = "# top\nfuse  F10 and F11   2 A  # behind\n";
        var panel = Read.Panel(text);
        panel.Statements[0].Span.Text.Should().Be("fuse  F10 and F11   2 A");
        panel.Comments.Select(c => (c.Text, c.OwnLine)).Should().Equal(("# top", true), ("# behind", false));
    }

    [Theory]
    [InlineData("rung 1 1 -> S0 ->\nrung 2 2 -> S1", 1)]
    [InlineData("rung 1 1 -> ( S0 | S1\nrung 2 2 -> ( S1 | S2 ) -> 2", 1)]
    [InlineData("MAINS -> Q1 ->\n\nfuse F1 2 A", 1)]
    [InlineData("contactor K1 1 A,\n  seen", 0)]
    [InlineData("contactor K1 1 A,\n  from the drawing", 0)]
    [InlineData("MAINS -> (\n  F1 -> K1 |\n# comment\n  F2\n) -> M1", 0)]
    public void A_line_goes_on_no_further_than_it_should(string text, int findings) =>
        Read.Codes(text).Should().HaveCount(findings);
}
