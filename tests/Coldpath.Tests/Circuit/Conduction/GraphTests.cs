using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>Elimination, fans and blocks on random graphs, each link with a switch of its own.</summary>
[Trait("Set", "engine")]
public sealed class GraphTests
{
    private const int MostSwitches = 12;

    private static readonly Gen<(int From, int To)[]> Links = Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6])
        .Array[4, MostSwitches]
        .Select(links => links.Select(l => (l.Item1, l.Item2)).ToArray());

    [Fact]
    public void Elimination_reaches_what_a_flood_reaches() =>
        Gen.Select(Links, Gen.Bool, Gen.Int[0, 6], Gen.Int[0, 6])
            .Sample(
                (links, bothWays, first, second) =>
                {
                    var table = new DiagramTable();
                    var graph = new GuardedGraph(table, 7);
                    foreach (var (i, (from, to)) in links.Index())
                        if (bothWays)
                            graph.Join(from, to, table.Variable(i));
                        else
                            graph.Direct(from, to, table.Variable(i));
                    var given = table.Variable(MostSwitches);
                    var spread = new Elimination(table, graph).Spread(
                        KeyValuePair.Create(first, Diagram.True),
                        KeyValuePair.Create(second, given)
                    );
                    foreach (var closed in Samples(links.Length + 1))
                    {
                        var on = closed[links.Length];
                        var bits = new bool[MostSwitches + 1];
                        closed.AsSpan(0, links.Length).CopyTo(bits);
                        bits[MostSwitches] = on;
                        var reached = Flood(
                            on ? [first, second] : [first],
                            Closed(links, closed),
                            bothWays,
                            -1
                        );
                        for (var node = 0; node < 7; node++)
                            table.Evaluate(spread[node], bits).Should().Be(reached.Contains(node));
                    }
                }
            );

    [Fact]
    public void A_fan_holds_when_no_node_cuts_the_pair_from_the_hub() =>
        Gen.Select(Links, Gen.Int[1, 6], Gen.Int[1, 6], Gen.Bool)
            .Sample(
                (links, a, b, named) =>
                {
                    var table = new DiagramTable();
                    var graph = new GuardedGraph(table, 7);
                    foreach (var (i, (from, to)) in links.Index())
                        graph.Join(from, to, table.Variable(i));
                    var pairs = named ? links.Append((a, b)) : [];
                    var holds = new FanGraph(table, graph, pairs).Holds(0, (a, b));
                    foreach (var closed in Samples(links.Length))
                    {
                        var conducting = Closed(links, closed).ToArray();
                        var expected = Enumerable
                            .Range(1, 6)
                            .All(cut =>
                            {
                                var reached = Flood([0], conducting, true, cut);
                                return reached.Contains(a) || reached.Contains(b);
                            });
                        table.Evaluate(holds, closed).Should().Be(expected);
                    }
                },
                iter: 400
            );

    [Fact]
    public void Two_edges_share_a_block_when_a_simple_cycle_passes_both() =>
        Links.Sample(
            links =>
            {
                var blocks = new Blocks(7, links);
                var cycles = Cycles(links).ToArray();
                for (var i = 0; i < links.Length; i++)
                for (var j = i + 1; j < links.Length; j++)
                    (blocks.OfEdge[i] == blocks.OfEdge[j])
                        .Should()
                        .Be(cycles.Any(c => c.Contains(i) && c.Contains(j)));
                blocks.OfEdge.Should().OnlyContain(block => block >= 0 && block < blocks.Count);
            },
            iter: 400
        );

    private static IEnumerable<(int, int)> Closed((int From, int To)[] links, bool[] closed) =>
        links.Where((_, i) => closed[i]);

    /// <summary>Up to 256 settings of the switches, spread over all there are.</summary>
    private static IEnumerable<bool[]> Samples(int switches)
    {
        var all = 1 << switches;
        var step = Math.Max(1, all / 256) | 1;
        for (var row = 0; row < all; row += step)
        {
            var bits = new bool[switches];
            for (var i = 0; i < switches; i++)
                bits[i] = (row >> i & 1) != 0;
            yield return bits;
        }
    }

    private static HashSet<int> Flood(
        IEnumerable<int> from,
        IEnumerable<(int From, int To)> links,
        bool bothWays,
        int without
    )
    {
        var seen = from.ToHashSet();
        int before;
        do
        {
            before = seen.Count;
            foreach (var (a, b) in links)
            {
                if (a == without || b == without)
                    continue;
                if (seen.Contains(a))
                    seen.Add(b);
                if (bothWays && seen.Contains(b))
                    seen.Add(a);
            }
        } while (seen.Count > before);
        return seen;
    }

    private static IEnumerable<HashSet<int>> Cycles((int From, int To)[] links)
    {
        for (var first = 0; first < links.Length; first++)
            foreach (var cycle in Extend(links[first].From, links[first].To, [first], [links[first].From]))
                yield return cycle;

        IEnumerable<HashSet<int>> Extend(int start, int at, HashSet<int> used, HashSet<int> passed)
        {
            if (at == start)
            {
                yield return used;
                yield break;
            }
            if (passed.Contains(at))
                yield break;
            for (var i = 0; i < links.Length; i++)
            {
                var (a, b) = links[i];
                if (used.Contains(i) || a == b || (a != at && b != at))
                    continue;
                foreach (var cycle in Extend(start, a == at ? b : a, [.. used, i], [.. passed, at]))
                    yield return cycle;
            }
        }
    }
}
