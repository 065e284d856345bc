using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

/// <summary>Kinds that a user writes.</summary>
public class KindTextTests
{
    [Fact]
    public void OwnKindWorksAsABuiltInOne()
    {
        var library = Declared.With(
            """
            kind sluice switch
              means "opens two poles when the sluice is shut"
              takes current in A, bare, needed
              takes poles as number, default 2
              variable gate: open | shut, process
                open -> shut by process
                shut -> open by process
              for each pole [1 - 2] [3 - 4], first poles
                contact main, power, closed when gate is open
              end
              state open when gate is open
            end
            """
        );

        var device = Declared.Device("sluice switch B7 16 A", library: library);

        Soundness.Check(device);
        device.OwnVariable.Should().Be("gate");
        device.LineSide.Should().Equal("1", "3");
        device.Parts.Should().ContainSingle(p => p.Through && p.Left.Count == 2);
        device
            .Network.Elements.Select(e => e.Closed)
            .Should()
            .AllBeEquivalentTo(new VariableIs("gate", "open"));
        library.Names.Should().Contain("sluice switch").And.Contain("contactor");
    }

    [Theory]
    [InlineData("when loosely energised [A1 - A2] between 85 % of coil and 110 % of coil", true)]
    [InlineData("when energised [A1 - A2] between 85 % of coil and 110 % of coil", false)]
    [InlineData("when not loosely energised [A1 - A2] between 20 % of coil and 110 % of coil", false)]
    public void ABandOfVoltageThroughLoadsIsNeverSure(string when, bool optional)
    {
        var library = Declared.With(
            $"""
            kind odd relay
              means "pulls in at what comes through a lamp"
              takes coil in V, needed
              variable flap: out | in, cell
                out -> in by settle {when}
              load winding [A1 - A2]
            end
            """
        );

        var move = Declared
            .Device("odd relay B7 coil 230 V", library: library)
            .Network.Variables.Single(v => v.Name == "flap")
            .Moves.Single();

        (move.When == Expression.False).Should().Be(optional);
        (move.May != Expression.False).Should().Be(optional);
    }

    [Fact]
    public void LikeTakesAllLinesButWhatItIsCalled()
    {
        var library = Declared.With(
            """
            kind float switch
              means "a float"
              letter B
              symbol float
              like level contact
            end
            """
        );
        var own = Declared.Device("float switch B1 closes on high water", library: library);
        var other = Declared.Device("level contact B1 closes on high water");

        own.Kind.Symbol.Should().Be("float");
        own.Network.Variables.Should().BeEquivalentTo(other.Network.Variables);
        own.Families.Should().Equal(other.Families);
    }

    [Fact]
    public void MakeBeforeBreakHasNothingBetween()
    {
        var library = Declared.With(
            """
            kind shorting switch
              takes positions as positions, bare, needed
              positions switch of positions, make before break
              family at [*3 - *4] by switch
            end
            """
        );

        Declared
            .Device("shorting switch S1 A | OFF | B", library: library)
            .Network.Variables.Single()
            .Values.Should()
            .Equal("A", "OFF", "B");
    }

    [Fact]
    public void InnerNetsOfAPoleAreItsOwn()
    {
        var library = Declared.With(
            """
            kind pair of fuses
              for each pole [1 - 2] [3 - 4]
                thermal first [line - *mid], power
                thermal second [*mid - load], power
              end
            end
            """
        );

        Declared
            .Device("pair of fuses F1", library: library)
            .Network.Nets.Should()
            .Contain(["*mid1", "*mid2"]);
    }

    [Theory]
    [InlineData("contact main [1 - 2], closed when armatur is in", "K001")]
    [InlineData("contact main [1 - 2], closed when armature is on", "K002")]
    [InlineData("variable armature: a | b\n  a -> b by operator", "K003")]
    [InlineData(
        "for each pole [1 - 2] [3 - 4]\n    contact main\n  end\n  state closed when main closed",
        "K004"
    )]
    [InlineData("if armature is in\n    contact main [1 - 2]\n  end", "K005")]
    [InlineData("if joined [A1 - A2]\n    contact main [1 - 2]\n  end", "K005")]
    [InlineData("contact main [1 - 2], closed when energised [A1 - A2]", "K006")]
    [InlineData(
        "converter transformer out from [1, 2], when not energised [1 - 2]\n    conductor [3] at 24 V\n    conductor [4] at 0 V\n  end",
        "K007"
    )]
    [InlineData("contact main [line - 2]", "K008")]
    [InlineData("contact main", "K008")]
    [InlineData("load lost [1 - *nowhere]", "K009")]
    [InlineData("contact main [1 - 2], closed when main closed", "K010")]
    [InlineData("source out\n    conductor [1] at coil\n    conductor [2] at 0 V\n  end", "K011")]
    [InlineData("variable v: a | b\n  a -> c by operator", "K002")]
    [InlineData("variable v: a | b\n  a -> b by magic", "K002")]
    [InlineData("failure f of class bad", "K002")]
    [InlineData("isolates by armature through nothing", "K001")]
    [InlineData("opens on short through nothing, armature becomes out", "K001")]
    [InlineData("protects against fire through nothing by armature", "K002")]
    [InlineData("use from coil", "K001")]
    [InlineData("like nothing", "K013")]
    [InlineData("if coil given\n    flag spare\n  end", "K015")]
    [InlineData("like own kind", "K010")]
    [InlineData("pair reversing of coil", "K001")]
    [InlineData("constraint magic x: armature is in", "K002")]
    public void SaysWhereTheTextIsWrong(string lines, string code)
    {
        var library = Declared.With(
            $"""
            kind own kind
              takes coil in V
              coil [A1 - A2] at coil, moves armature
              {lines}
            end
            """
        );

        var made = Declared.Instance("own kind D1", library: library);

        made.Blueprint.Should().BeNull();
        made.Findings.Select(f => f.Code).Should().Contain(code);
        made.Findings.Should().OnlyContain(f => f.Location.Source.Name == "own.kinds");
    }

    [Fact]
    public void MoveNeedsAVariable()
    {
        var library = Declared.With("kind own kind\n  a -> b by operator\nend");

        Declared
            .Instance("own kind D1", library: library)
            .Findings.Should()
            .ContainSingle(f => f.Code == "K012");
    }

    [Fact]
    public void ATakenNameIsSaidAndTheFirstHolds()
    {
        var parsed = PanelParser.Parse(
            new SourceText("own.kinds", "kind contactor\n  means \"mine\"\nend\n")
        );
        var (library, findings) = KindLibrary.Standard.With(parsed.Panel.Statements.OfType<KindSyntax>());

        findings.Should().ContainSingle(f => f.Code == "K014");
        KindCompiler.Describe(library.Find("contactor")!).Means.Should().StartWith("power contactor");
    }

    [Fact]
    public void NothingIsSaidOfAKindWithABrokenLine()
    {
        var parsed = PanelParser.Parse(
            new SourceText(
                "own.kinds",
                "kind own kind\n  contact main [1 - 2], closed wehn x\n  state a when b is c\nend\n"
            )
        );
        var (library, _) = KindLibrary.Standard.With(parsed.Panel.Statements.OfType<KindSyntax>());
        var made = Declared.Instance("own kind D1", library: library);

        parsed.Findings.Should().NotBeEmpty();
        made.Blueprint.Should().BeNull();
        made.Findings.Should().BeEmpty();
    }
}
