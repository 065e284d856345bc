using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Sequence;

[Trait("Set", "engine")]
public class LostSuppliesTests
{
    public static TheoryData<int> Panels => [.. Enumerable.Range(860_000, 16)];

    [Theory]
    [MemberData(nameof(Panels))]
    public void A_condition_is_asked_of_the_panel_without_what_is_shorted(int number)
    {
        var netlist = RandomPanels.Panel(number, 24);
        var space = new StateSpace(netlist);
        var lost = new LostSupplies(new Network(netlist, space));
        Expression[] conditions =
        [
            .. netlist.Nets.Select(n => new Live(n)),
            .. netlist.Loads.Select(l => new Runs(l.Name, Turning.Any)),
        ];
        var mine = conditions.Select(lost.Of).ToArray();
        foreach (var state in new Bits(space).All)
        {
            var values = netlist
                .Variables.Index()
                .ToDictionary(v => v.Item.Name, v => v.Item.Values[state[v.Index]]);
            var shorted = new PlainNetwork(netlist, values).Shorted();
            var rest = new PlainNetwork(Without(netlist, shorted), values);
            conditions
                .Where((c, i) => space.Holds(mine[i], state) != rest.Holds(c))
                .Should()
                .BeEmpty($"of panel {number}");
        }
    }

    private static Netlist Without(Netlist netlist, HashSet<string> shorted)
    {
        return netlist with
        {
            Supplies = [.. netlist.Supplies.Select(Left)],
            Converters = [.. netlist.Converters.Select(c => c with { Output = Left(c.Output) })],
        };

        Supply Left(Supply supply) =>
            shorted.Contains(supply.Name) ? supply with { Present = Expression.False } : supply;
    }
}
