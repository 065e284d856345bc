using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.States;

public sealed class StateSpaceTests
{
    private static Netlist Netlist(params int[] values) =>
        new()
        {
            Panel = "P",
            Earth = "PE",
            Nets = ["PE"],
            Variables =
            [
                .. values.Select(
                    (count, i) =>
                        new Variable
                        {
                            Name = $"v{i}",
                            Device = $"v{i}",
                            Kind = VariableKind.Position,
                            Values = [.. Enumerable.Range(0, count).Select(v => $"{v}")],
                            Rest = $"{count - 1}",
                        }
                ),
            ],
        };

    private static readonly Gen<int[]> Shapes = Gen.Int[1, 7].Array[1, 5];

    [Fact]
    public void The_values_of_a_variable_are_a_partition_of_every_assignment() =>
        Shapes.Sample(shape =>
        {
            var space = new StateSpace(Netlist(shape));
            for (var v = 0; v < shape.Length; v++)
            {
                var all = Enumerable.Range(0, shape[v]).Select(value => space.Is(v, value)).ToArray();
                space.Table.AnyOf(all).IsTrue.Should().BeTrue();
                for (var i = 0; i < all.Length; i++)
                for (var j = 0; j < i; j++)
                    space.Table.Meet(all[i], all[j]).Should().BeFalse();
            }
        });

    [Fact]
    public void Every_state_has_one_code_and_is_counted_once() =>
        Shapes.Sample(shape =>
        {
            var space = new StateSpace(Netlist(shape));
            space.Size.Should().Be(shape.Aggregate(1L, (product, count) => product * count));
            for (var v = 0; v < shape.Length; v++)
                space.Count(space.Is(v, 0)).Should().Be(space.Size / shape[v]);
        });

    [Fact]
    public void A_state_survives_its_encoding() =>
        Gen.Select(Shapes, Gen.Int[0, 1_000_000])
            .Sample(
                (shape, seed) =>
                {
                    var space = new StateSpace(Netlist(shape));
                    var state = new State(shape.Select((count, i) => (seed >> i) % count));
                    space.Decode(space.Assignment(state)).Should().Be(state);
                    space.Count(space.Of(state)).IsOne.Should().BeTrue();
                    space.Holds(space.Of(state), state).Should().BeTrue();
                    space.First(space.Of(state)).Should().Be(state);
                    space.Table.Entails(space.Of(state), space.Domain).Should().BeTrue();
                }
            );

    [Fact]
    public void A_move_changes_one_variable_and_back() =>
        Gen.Select(Gen.Int[2, 7], Gen.Int[0, 6], Gen.Int[0, 6])
            .Where((count, from, to) => from < count && to < count)
            .Sample(
                (count, from, to) =>
                {
                    var space = new StateSpace(Netlist(3, count, 2));
                    var state = new State([2, from, 1]);
                    var after = space.Image(space.Of(state), Diagram.True, 1, from, to);
                    after.Should().Be(space.Of(state.With(1, to)));
                    space.PreImage(after, Diagram.True, 1, from, to).Should().Be(space.Of(state));
                    space.Image(space.Of(state), space.Is(0, 1), 1, from, to).IsFalse.Should().BeTrue();
                    space.Assign(space.Of(state), 1, to).Should().Be(space.Of(state.With(1, to)));
                }
            );

    [Fact, Trait("Set", "engine")]
    public void First_goes_by_declared_order_whatever_the_levels()
    {
        foreach (var order in new int[][] { [0, 1, 2], [2, 0, 1] })
        {
            var space = new StateSpace(Netlist(3, 5, 2), order: order);
            var some = space.Table.And(!space.Is(0, 0), space.Table.Or(space.Is(1, 3), space.Is(2, 1)));
            space.First(some).Should().Be(new State([1, 0, 1]));
            space.First(Diagram.False).Should().BeNull();
        }
    }

    [Fact, Trait("Set", "engine")]
    public void Rest_is_as_declared_and_spare_levels_are_free()
    {
        var space = new StateSpace(Netlist(3, 2));
        space.Rest.Should().Be(new State([2, 1]));
        space.Levels.Should().NotContain([space.SpareLevel(0), space.SpareLevel(1)]);
        space.SpareLevel(0).Should().NotBe(space.SpareLevel(1));
    }

    [Fact]
    public void The_order_holds_every_variable_and_is_the_same_each_time()
    {
        for (var number = 0; number < 50; number++)
        {
            var netlist = RandomPanels.Panel(number, 4096);
            VariableOrder.Of(netlist).Order().Should().Equal(Enumerable.Range(0, netlist.Variables.Count));
            VariableOrder.Of(netlist).Should().Equal(VariableOrder.Of(netlist));
        }
    }
}
