using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>
/// Shorts between supplies of the same and of different angle references, state by state: the network's conditions against
/// the rule for one state, which knows which component each conductor lies in and looks at every cycle.
/// </summary>
[Trait("Set", "engine")]
public sealed class MixedCyclesTests
{
    private const int Circuits = 60;
    private const int Switches = 7;

    [Fact]
    public void Shorts_of_mixed_supplies_are_those_of_the_rule_in_every_state()
    {
        var (shorted, mixed) = (0, 0);
        for (var seed = 1; seed <= Circuits; seed++)
        {
            var (bench, links) = Circuit(new Random(seed));
            var sources = bench.Network.Sources;
            var shorts = new Shorts(bench.Network.Mesh, sources, new(bench.Network.Mesh, sources));
            for (var on = 0; on < 1 << Switches; on++)
            {
                string[] closed =
                [
                    .. links.Index().Where(l => (on >> l.Index & 1) == 1).Select(l => l.Item.Name),
                ];
                var placed = Placed(bench, links.Where((_, i) => (on >> i & 1) == 1));
                int[] expected = [.. VoltageCycles.Shorted(placed)];
                var driving = VoltageCycles.Driving(placed).ToHashSet();
                for (var supply = 0; supply < sources.SupplyCount; supply++)
                    bench
                        .Holds(_ => shorts.Of(supply), closed)
                        .Should()
                        .Be(expected.Contains(supply), $"circuit {seed}, {string.Join(' ', closed)}");
                foreach (var source in sources.All)
                    bench
                        .Holds(_ => shorts.DrivenBy(source), closed)
                        .Should()
                        .Be(driving.Contains(source), $"circuit {seed}, {string.Join(' ', closed)}");
                shorted += expected.Length > 0 ? 1 : 0;
                mixed +=
                    expected.Select(s => sources.BySupply[s][0].Supply.Group).Distinct().Count() > 1 ? 1 : 0;
            }
        }
        shorted.Should().BeGreaterThan(1000);
        mixed.Should().BeGreaterThan(500);
    }

    private static (Bench, (string Name, string A, string B)[]) Circuit(Random random)
    {
        var bench = new Bench();
        string[] nets = ["a1", "a2", "a3", "b1", "b2", "b3", "c1", "c2", "d1", "d2"];
        string Group() => random.Next(2) == 0 ? "G" : "H";
        bench.Star("A", "a1 a2 a3", Group()).Star("B", "b1 b2 b3", Group());
        bench.TwoWire("C", "c1 c2", random.Next(2) == 0 ? 230 : 110, random.Next(3) == 0 ? "C" : Group());
        bench.TwoWire("D", "d1 d2", 230, random.Next(3) == 0 ? "D" : Group());
        var links = Enumerable
            .Range(0, Switches)
            .Select(i =>
                (Name: $"S{i}", A: nets[random.Next(nets.Length)], B: nets[random.Next(nets.Length)])
            )
            .ToArray();
        foreach (var (name, a, b) in links)
            bench.Link($"{name}.x", ElementType.Contact, a, b, bench.On(name));
        return (bench, links);
    }

    private static List<(Source, int)> Placed(
        Bench bench,
        IEnumerable<(string Name, string A, string B)> closed
    )
    {
        var sources = bench.Network.Sources.All;
        var component = Enumerable.Range(0, bench.Network.Mesh.NetCount).ToArray();
        foreach (var (_, a, b) in closed)
        {
            var (from, to) = (component[bench.Network.Mesh.Net(b)], component[bench.Network.Mesh.Net(a)]);
            component = [.. component.Select(c => c == from ? to : c)];
        }
        return [.. sources.Select(s => (s, component[s.Net]))];
    }
}
