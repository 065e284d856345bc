using Coldpath.Notation.Syntax;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

/// <summary>What the lines of a kind become.</summary>
public class KindSyntaxTests
{
    [Fact]
    public void Blocks_hold_their_lines()
    {
        var lines = Read.Lines(
            "if mirror contacts and poles at least 2\n flag a\nelse\n for each pole [1 - 2] [3 - 4], first poles\n  contact main\n end\nend\nflag b"
        );
        lines.Should().HaveCount(2);
        var choice = lines[0].Should().BeOfType<IfSyntax>().Subject;
        choice.Then.Should().ContainSingle().Which.Should().BeOfType<FlagSyntax>();
        var each = choice.Else.Should().ContainSingle().Which.Should().BeOfType<ForEachPoleSyntax>().Subject;
        each.Poles.Select(p => $"{p.A}~{p.B}").Should().Equal("1~2", "3~4");
        each.Lines.Should().ContainSingle().Which.Should().BeOfType<ElementSyntax>();
        each.Span.Text.Should().StartWith("for").And.EndWith("end");
    }

    [Theory]
    [InlineData("takes coil in V DC, needed", "coil", false, true)]
    [InlineData("takes control supply in V, bare", "control supply", true, false)]
    [InlineData("takes ratio in V to V", "ratio", false, false)]
    public void A_rating_with_a_unit(string line, string name, bool bare, bool needed)
    {
        var takes = (TakesSyntax)Read.Lines(line)[0];
        string.Join(' ', takes.Name).Should().Be(name);
        (takes.Bare, takes.Needed).Should().Be((bare, needed));
        takes.Form.Should().BeOfType<UnitFormSyntax>();
    }

    [Fact]
    public void A_choice_may_have_several_words_and_a_default()
    {
        var takes = (TakesSyntax)
            Read.Lines("takes transition of open | closed transition, default closed transition")[0];
        takes
            .Form.Should()
            .BeOfType<ChoiceFormSyntax>()
            .Which.Choices.Should()
            .Equal("open", "closed transition");
        takes.Default.Should().BeOfType<WordAtom>().Which.Text.Should().Be("closed transition");
    }

    [Fact]
    public void Sums_lie_flat_and_products_bind_tighter()
    {
        var sum = ((LetSyntax)Read.Lines("let x = a + b * c - (d + 24 V) / root 3")[0]).Value;
        var rest = sum.Should().BeOfType<SumSyntax>().Which.Rest;
        rest.Select(o => (o.Inverse, o.Value.GetType().Name))
            .Should()
            .Equal((false, "ProductSyntax"), (true, "ProductSyntax"));
        var quotient = (ProductSyntax)rest[1].Value;
        quotient.First.Should().BeOfType<SumSyntax>();
        quotient.Rest[0].Should().Match<OperandSyntax>(o => o.Inverse && o.Value is RootSyntax);
    }

    [Fact]
    public void A_move_has_conditions_for_when_it_must_and_when_it_may()
    {
        var lines = Read.Lines(
            "variable armature: out | in, rest out, powered in, momentary\n"
                + "out -> in by settle when energised [A1 - A2] between 85 % of coil and 110 % of coil, may when may hold [A1 - A2] at coil\n"
                + "in -> out by settle"
        );
        var variable = (VariableSyntax)lines[0];
        (variable.Rest!.Text, variable.Powered!.Text, variable.Momentary).Should().Be(("out", "in", true));
        var move = (MoveSyntax)lines[1];
        var energised = move.When.Should().BeOfType<EnergisedSyntax>().Subject;
        energised.Low.Should().BeOfType<PercentOfSyntax>().Which.Percent.Should().Be(85);
        energised.High.Should().BeOfType<PercentOfSyntax>().Which.Percent.Should().Be(110);
        move.May.Should().BeOfType<PullSyntax>().Which.Act.Should().Be(CoilAct.MayHold);
        lines[2].Should().BeOfType<MoveSyntax>().Which.When.Should().BeNull();
    }

    [Theory]
    [InlineData("armature is in", typeof(IsSyntax))]
    [InlineData("position is closed", typeof(IsSyntax))]
    [InlineData("poles at most 2", typeof(CompareSyntax))]
    [InlineData("coil given", typeof(GivenSyntax))]
    [InlineData("mirror contacts", typeof(SaidSyntax))]
    [InlineData("no weld", typeof(SaidSyntax))]
    [InlineData("any main closed", typeof(ClosedSyntax))]
    [InlineData("no heater carries", typeof(CarriesSyntax))]
    [InlineData("any link is blown", typeof(IsSyntax))]
    [InlineData("loosely energised [1 - 2]", typeof(EnergisedSyntax))]
    [InlineData("must pull [A1 - A2] at coil", typeof(PullSyntax))]
    [InlineData("series fed [L1, L2, L3] reverse", typeof(FedSyntax))]
    [InlineData("single [L1, L2, L3]", typeof(SingleSyntax))]
    [InlineData("joined [1 - 2]", typeof(JoinedSyntax))]
    [InlineData("not (a or b)", typeof(NotSyntax))]
    public void Terms_of_conditions(string condition, Type type) =>
        ((KindStateSyntax)Read.Lines($"state in when {condition}")[0]).When.Should().BeOfType(type);

    [Fact]
    public void Supplies_and_converters_have_lines_of_their_own()
    {
        var lines = Read.Lines(
            "source, present when grid is on, group utility, limited, extra low, dc, stored by charge, discharge time\n"
                + "if phases is 1\nconductor [L+] at voltage, plus\nelse\nconductor [L1] at voltage / root 3 angle -120, present when a is b\nend\nend\n"
                + "converter transformer secondary from [H1, H4], when x is y, group g\nwinding [H1, H4]\nwinding [X1, X2]\nconductor [X1] at 120 V\nend\n"
                + "coupling [U1, V1] [U2, V2], from first"
        );
        var source = (SourceSyntax)lines[0];
        source.Name.Should().BeNull();
        source.Options.Should().Match<SupplyOptionsSyntax>(o => o.Limited && o.ExtraLow && o.Dc);
        var choice = (IfSyntax)source.Lines[0];
        choice
            .Then[0]
            .Should()
            .BeOfType<SupplyConductorSyntax>()
            .Which.Polarity.Should()
            .Be(SupplyPolarity.Plus);
        choice
            .Else[0]
            .Should()
            .BeOfType<SupplyConductorSyntax>()
            .Which.Angle.Should()
            .BeOfType<NegativeSyntax>();
        var converter = (ConverterSyntax)lines[1];
        converter.Name!.Text.Should().Be("secondary");
        converter.When.Should().BeOfType<IsSyntax>();
        converter.Options.Group.Select(w => w.Text).Should().Equal("g");
        converter.Lines.Should().HaveCount(3);
        lines[2].Should().BeOfType<CouplingSyntax>().Which.FromFirst.Should().BeTrue();
    }

    [Fact]
    public void What_a_device_is_for()
    {
        var lines = Read.Lines(
            "use stop\nuse from purpose\nisolates by position through main, lockable, visible, rank 2\n"
                + "protects against phase loss through heater by trip\n"
                + "opens on short through main, position becomes tripped, breaks interrupting rating\n"
                + "constraint mechanical interlock: at most one of interlocked in\npair change-over of partners\n"
                + "mode delta feeds [U1, V1, W1], joined [U1 - W2] [V1 - U2], turns forward, speed 1780\n"
                + "bar [L1] [L2], first 2\nline side [U, V]\nload side [X, Y], first n\n"
                + "failure shorted of class semiconductor\npositions switch of positions, make before break\nfamily at [*3 - *4] by switch"
        );
        lines
            .Select(l => l.GetType().Name.Replace("Syntax", ""))
            .Should()
            .Equal(
                "Use Use Isolates Protects OpensOnShort Constraint DevicePair Mode Bar Side Side Failure Positions Family".Split(
                    ' '
                )
            );
        ((ModeSyntax)lines[7]).Joined.Should().HaveCount(2);
        ((ConstraintSyntax)lines[5])
            .Holds.Should()
            .BeOfType<AtMostOneSyntax>()
            .Which.State[0]
            .Text.Should()
            .Be("in");
        ((SideSyntax)lines[10]).IsLoadSide.Should().BeTrue();
        ((FamilySyntax)lines[13]).By!.Text.Should().Be("switch");
    }

    [Fact]
    public void A_kind_without_end_does_not_swallow_the_panel()
    {
        var panel = Read.Panel("kind a\n  flag x\nMAINS -> K1\ncontactor K1 1 A\n");
        panel
            .Statements.Select(s => s.GetType().Name)
            .Should()
            .Equal("KindSyntax", "ChainSyntax", "DeclarationSyntax");
    }
}
