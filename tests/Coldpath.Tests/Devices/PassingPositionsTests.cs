using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Devices;
using Coldpath.Tests.Devices.Behaving;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

public class PassingPositionsTests
{
    [Theory]
    [InlineData("1 -> S2 -> P1 -> 2")]
    [InlineData("1 -> NC S2 -> P1 -> 2")]
    public void AButtonOfOneSortOfContactHasNoneBetween(string rung) =>
        Values("push button S2", rung).Should().Equal("released", "pressed");

    [Fact]
    public void AButtonOfBothSortsKeepsThem() =>
        Values("push button S2", "1 -> S2 -> P1 -> 2\n1 -> NC S2 -> P2 -> 2")
            .Should()
            .Equal("released", "pressing", "pressed", "releasing");

    [Fact]
    public void ASelectorKeepsThoseBetweenPositionsThatBothClose()
    {
        Values("selector S2 HAND | OFF | AUTO", "1 -> S2 at HAND -> P1 -> 2\n1 -> S2 at AUTO -> P2 -> 2")
            .Should()
            .Equal("HAND", "OFF", "AUTO");
        Values("selector S2 ONE | TWO, rest ONE", "1 -> S2 at ONE -> P1 -> 2\n1 -> S2 at TWO -> P2 -> 2")
            .Should()
            .Equal("ONE", "TWO", "ONE>TWO", "TWO>ONE");
    }

    /// <summary>The same settled states can be reached, and the same shorts found, with and without.</summary>
    [Theory]
    [InlineData("1 -> ( S2 | NO K0 ) -> S1 -> coil K0 -> 2")]
    [InlineData("1 -> S1 -> ( S2 | NC S2 -> NO K0 ) -> coil K0 -> 2")]
    public void LeavingOutChangesNothingThatSettles(string rung)
    {
        const string Lines = "push button S1 stop\npush button S2\nrelay K0 coil 120 V\n";
        var full = Restored(Played.With(Lines + rung).Netlist);
        var reduced = PassingPositions.LeaveOut(full);
        var (before, after) = (
            new Behaviour(full, new DiagramTable()),
            new Behaviour(reduced, new DiagramTable())
        );

        foreach (var (a, b, c) in Combinations())
        {
            var state = Expression.AllOf(
                new VariableIs("S1", a),
                new VariableIs("S2", b),
                new VariableIs("K0", c)
            );
            var first = before.Space.Table.And(before.Of(state), before.ReachableSettled);
            var second = after.Space.Table.And(after.Of(state), after.ReachableSettled);
            first.IsFalse.Should().Be(second.IsFalse, $"{a} {b} {c}");
        }
    }

    private static IEnumerable<(string, string, string)> Combinations() =>
        from a in new[] { "released", "pressed" }
        from b in new[] { "released", "pressed" }
        from c in new[] { "out", "in" }
        select (a, b, c);

    /// <summary>With the buttons as their kind has them.</summary>
    private static Netlist Restored(Netlist netlist)
    {
        var button = Declared.Device("push button S").Network.Variables[0];
        return netlist with
        {
            Variables =
            [
                .. netlist.Variables.Select(v =>
                    v.Momentary ? button with { Name = v.Name, Device = v.Device } : v
                ),
            ],
        };
    }

    private static IReadOnlyList<string> Values(string device, string rungs) =>
        Played
            .With($"{device}\nlamp P1 and P2\n{rungs}")
            .Netlist.Variables.Single(v => v.Name == "S2")
            .Values;
}
