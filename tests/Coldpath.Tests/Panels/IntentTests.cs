using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

public class IntentTests
{
    private const string Starter = """
        disconnect Q1
        contactor K1
        contactor K2
        selector S1 HAND OFF AUTO
        selector S2 NORMAL BYPASS
        stop button S0
        push button S3
        motor M1
        strip X1
        MAINS -> Q1 -> ( K1 | K2 ) -> M1
        wire 7: X1:1

        """;

    private static Intent Only(string line) => Bound.Good(Starter + line + "\n").Netlist.Intents.Single();

    [Fact]
    public void States_are_those_of_the_kind()
    {
        var intent = Only("never K1 closed and K2 in, when settled, even with 2 failures");
        intent.Form.Should().Be(IntentForm.Never);
        intent.Settled.Should().BeTrue();
        intent.Failures.Should().Be(2);
        intent
            .When.Should()
            .Be(
                Expression.AllOf(
                    Expression.AnyOf(
                        new Closed("K1.1/L1-2/T1"),
                        new Closed("K1.3/L2-4/T2"),
                        new Closed("K1.5/L3-6/T3")
                    ),
                    new VariableIs("K2", "in")
                )
            );
    }

    [Fact]
    public void Anything_may_be_live_or_dead_and_a_load_may_run()
    {
        Only("never M1:U live or 7 live")
            .When.Should()
            .Be(Expression.AnyOf(new Live("K1:2/T1"), new Live("7")));
        Only("never M1 runs reverse").When.Should().Be(new Runs("M1", Turning.Reverse));
        Only("dead M1 when Q1 open and not MAINS present")
            .Should()
            .Match<Intent>(i => i.Of == "M1" && i.Form == IntentForm.Dead);
        Only("never MAINS shorted").When.Should().Be(new InShort("MAINS"));
        Only("never X1 dead").When.Should().Be(Expression.Negate(new Live("7")));
        Only("never S1 at AUTO").When.Should().Be(new VariableIs("S1", "AUTO"));
    }

    [Theory]
    [InlineData("stops M1 by S0", "S0=pressed")]
    [InlineData("stops M1 by S1 at once", "S1=OFF")]
    [InlineData("stops M1 by Q1", "Q1=open")]
    [InlineData("stops M1 by S3", "S3=pressed")]
    public void Operated_is_away_from_rest_at_off_or_open(string line, string operated)
    {
        var intent = Only(line);
        intent.By.Select(o => $"{o.Variable}={o.Value}").Should().Equal(operated);
        intent.AtOnce.Should().Be(line.EndsWith("at once", StringComparison.Ordinal));
    }

    [Fact]
    public void A_way_names_its_devices() => Only("can M1 run via K1").Via.Should().Equal("K1");

    [Theory]
    [InlineData(
        "stops M1 by S2",
        "S2",
        "S2 is no stop, and has no OFF or open position that could stop anything"
    )]
    [InlineData("stops Q1 by S0", "Q1", "Q1 is nothing that runs")]
    [InlineData("can M1 run via S0", "S0", "S0 has no power poles that a load could run through")]
    [InlineData("never K1 shut", "shut", "K1 has no state \"shut\"; it has in, closed, live, dead")]
    [InlineData("never M1:U pressed", "pressed", "a terminal or node is live or dead, not \"pressed\"")]
    [InlineData("never K9 closed", "K9", "K9 is not declared")]
    [InlineData("dead node 9 when Q1 open", "9", "9 is not declared")]
    [InlineData("dead M1:Q when Q1 open", "Q", "M1 has no terminal Q; it has U, V, W")]
    public void What_cannot_be_meant_is_said_where_it_stands(string line, string place, string message)
    {
        var finding = Bound.Any(Starter + line + "\n").Findings.Should().ContainSingle().Subject;
        finding.Message.Should().Be(message);
        finding.Location.Text.Should().Be(place);
    }
}
