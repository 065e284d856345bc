using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.States;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Live by a sweep over the levels against live by elimination: the same diagrams, of random panels and meshes.</summary>
public sealed class SweepTests
{
    private const int Panels = 300;

    [Fact]
    public void A_sweep_over_random_panels_comes_to_what_elimination_does()
    {
        var varying = 0;
        foreach (var number in Enumerable.Range(0, Panels))
        {
            var netlist = number % 3 == 0 ? RandomMeshes.Mesh(number) : RandomPanels.Panel(number, 128);
            var network = new Network(netlist, new StateSpace(netlist));
            foreach (var net in netlist.Nets)
            {
                network.Live([net]).Should().Be(network.Live(net), $"{net} of panel {number}");
                varying += network.Live(net).IsConstant ? 0 : 1;
            }
            var some = netlist.Nets.Where((_, i) => i % 3 == number % 3).ToArray();
            var any = network.States.Table.AnyOf(some.Select(network.Live));
            network.Live(some).Should().Be(any, $"nets of panel {number}");
        }
        varying.Should().BeGreaterThan(3 * Panels);
    }
}
