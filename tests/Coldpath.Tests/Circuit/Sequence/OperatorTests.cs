using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class OperatorTests
{
    private const int States = 3;

    public static TheoryData<int> Panels => [.. Enumerable.Range(840_000, 14)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void Every_operation_comes_to_what_the_words_say(int number)
    {
        var panel = new Behaviour(RandomPanels.Panel(number, 64), new DiagramTable());
        var search = new PlainSearch(panel);
        var plain = new PlainOperator(panel, search);
        var dice = new System.Random(number);
        foreach (
            var state in Enumerable.Range(0, States).Select(_ => search.All[dice.Next(search.All.Count)])
        )
        foreach (var (v, variable) in panel.Netlist.Variables.Index())
        foreach (var (value, name) in variable.Values.Index())
        {
            var (refusal, end, moves, raced) = plain.Operate(state, v, value);
            var operated = panel.Operator.Operate(state, new(variable.Name, name));
            operated.Refusal.Should().Be(refusal, $"{variable.Name} to {name} in panel {number}");
            operated.State.Should().Be(end);
            operated.Steps.Select(s => s.Move).Should().Equal(moves);
            operated.Raced.Should().Be(raced);
            operated
                .Chatters.Should()
                .Be(refusal is null && search.Settled.Contains(end) && !search.Steady.Contains(end));
        }
    }

    [Fact]
    public void What_there_is_not_is_refused()
    {
        var panel = new Behaviour(Boards.TwoWire().Build(), new DiagramTable());
        var rest = panel.Space.Rest;

        panel.Operator.Operate(rest, new("S9", "on")).Refusal.Should().Be(Refusal.Unknown);
        panel.Operator.Operate(rest, new("S1", "half")).Refusal.Should().Be(Refusal.Unknown);
        panel.Operator.Operate(rest, new("S1", "half")).State.Should().Be(rest);
    }
}
