using Coldpath.Devices;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

public class FlatteningTests
{
    private const string Starter = """
        disconnect Q1 in "incoming"
        disconnect Q2 standby
        contactor K1
        contactor K2
        linkage A1 K1 K2
        transformer T1
        stop button S0
        motor M1
        strip X1
        MAINS -> Q1 -> ( K1 | K2[L3, L2, L1] ) -> M1
        Q1[L1, L2] -> T1
        T1:X2 -> rail 2 -> PE
        rung 1 T1:X1 -> S0 -> ( coil K1 | X1:1 ) -> 2
        untraced X1:1 because "leaves for the pump house"
        from the drawing K2

        """;

    private readonly Netlist netlist = Bound.Good(Starter).Netlist;

    [Fact]
    public void Every_net_an_element_or_supply_names_is_listed_once()
    {
        var named = netlist
            .Elements.SelectMany(e => new[] { e.A, e.B })
            .Concat(netlist.Supplies.SelectMany(s => s.Conductors).Select(c => c.Net))
            .Concat(netlist.Points.Select(p => p.Net))
            .Concat(netlist.Loads.SelectMany(l => l.Terminals));
        netlist.Nets.Should().OnlyHaveUniqueItems().And.Contain(named);
        netlist.Nets[0].Should().Be(netlist.Earth);
    }

    [Fact]
    public void Names_are_the_tags_and_readable()
    {
        netlist
            .Variables.Select(v => v.Name)
            .Should()
            .OnlyHaveUniqueItems()
            .And.Contain(["MAINS", "Q1", "K1", "S0"]);
        netlist
            .Elements.Select(e => e.Id)
            .Should()
            .OnlyHaveUniqueItems()
            .And.Contain(["K1.1/L1-2/T1", "S0.11-12"]);
        netlist.Loads.Should().ContainSingle().Which.Name.Should().Be("M1");
        netlist.Converters.Should().ContainSingle().Which.Output.Name.Should().Be("T1");
        netlist.Nets.Should().Contain(["2", "MAINS:L1", "M1:*star"]);
        netlist.Points.Should().Contain(new Point("Q1:1/L1", "MAINS:L1", "Q1", "incoming"));
    }

    [Fact]
    public void Standby_devices_stay_open_when_powered()
    {
        netlist.Powered.Should().Equal(new Operation("Q1", "closed"));
        netlist.Variables.Single(v => v.Name == "Q2").Standby.Should().BeTrue();
    }

    [Fact]
    public void A_linkage_lets_one_be_closed_over_variables_alone()
    {
        var constraint = netlist.Constraints.Should().ContainSingle().Subject;
        constraint.Kind.Should().Be("mechanical");
        constraint
            .Holds.Should()
            .Be(Expression.Negate(Expression.AllOf(new VariableIs("K1", "in"), new VariableIs("K2", "in"))));
    }

    [Fact]
    public void An_untraced_terminal_may_bring_an_unknown_supply()
    {
        var supply = netlist.Supplies.Single(s => s.Name == "untraced X1:1");
        supply.Limited.Should().BeTrue();
        supply.Group.Should().Be("untraced X1:1");
        supply.Conductors.Should().ContainSingle().Which.Net.Should().Be(netlist.NetOf("X1:1"));
        supply.Present.Should().Be(new VariableIs("untraced X1:1", "present"));
        netlist.Variables.Single(v => v.Name == "untraced X1:1").Moves.Should().HaveCount(2);
        netlist
            .Assumed.Should()
            .Contain(a => a.StartsWith("X1:1 was not traced (leaves for the pump house)"));
        netlist.Assumed.Should().Contain("taken from the drawing and not seen: K2");
    }

    [Fact]
    public void The_same_text_gives_the_same_netlist() =>
        Bound.Good(Starter).Netlist.Should().BeEquivalentTo(netlist, o => o.WithStrictOrdering());

    [Fact]
    public void The_order_of_the_wiring_does_not_change_what_is_joined()
    {
        var lines = Starter.Split('\n');
        var declared = lines.TakeWhile(l => !l.StartsWith("MAINS", StringComparison.Ordinal)).ToList();
        var turned = string.Join('\n', declared.Concat(lines.Skip(declared.Count).Reverse())) + "\n";
        var other = Bound.Good(turned).Netlist;
        other
            .Points.ToDictionary(p => p.Name, p => p.Net)
            .Should()
            .Equal(netlist.Points.ToDictionary(p => p.Name, p => p.Net));
    }
}
