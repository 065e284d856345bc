using System.Numerics;
using Coldpath.Circuit.Diagrams;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Diagrams;

/// <summary>Families of sets of six levels against lists of sets; a set is a number with a bit for each level.</summary>
[Trait("Set", "engine")]
public sealed class FamilyTableTests
{
    private const int Width = 6;
    private static readonly int[] Levels = [.. Enumerable.Range(0, Width)];
    private static readonly Gen<int[]> Sets = Gen.Int[0, (1 << Width) - 1]
        .List[0, 40]
        .Select(sets => sets.Distinct().Order().ToArray());

    [Fact]
    public void Operations_agree_with_lists_of_sets() =>
        Gen.Select(Sets, Sets, Gen.Int[0, Width - 1])
            .Sample(
                (a, b, level) =>
                {
                    var table = new FamilyTable();
                    var (f, g) = (Build(table, a), Build(table, b));
                    var bit = 1 << level;
                    Read(table, f).Should().Equal(a);
                    table.Count(f).Should().Be(a.Length);
                    table.HasNothing(f).Should().Be(a.Contains(0));
                    Read(table, table.Union(f, g)).Should().Equal(a.Union(b).Order());
                    Read(table, table.FreeOf(f, g)).Should().Equal(a.Where(s => !b.Any(t => Contains(s, t))));
                    Read(table, table.Minimal(f)).Should().Equal(Minimal(a));
                    Read(table, table.Without(f, level)).Should().Equal(a.Where(s => (s & bit) == 0));
                    Read(table, table.With(f, level))
                        .Should()
                        .Equal(a.Where(s => (s & bit) != 0).Select(s => s ^ bit));
                    table.Support(f).Should().Equal(Levels.Where(l => a.Any(s => (s >> l & 1) != 0)));
                }
            );

    [Fact]
    public void Minimal_sets_of_a_function_are_those_that_contain_no_other() =>
        Sets.Sample(a =>
        {
            var table = new DiagramTable();
            var f = table.AnyOf(a.Select(set => Cube(table, set)));
            var minimal = new MinimalSets(table, f);
            minimal.Count.Should().Be(Minimal(a).Count());
            minimal
                .Cheapest(Levels)
                .Select(set => set.Sum(level => 1 << level))
                .Order()
                .Should()
                .Equal(Minimal(a));
        });

    [Fact]
    public void Sets_come_cheapest_first_then_in_the_order_of_the_list() =>
        Gen.Select(Sets, Gen.Long[0, 3].Array[Width], Gen.Shuffle(Levels))
            .Sample(
                (a, cost, list) =>
                {
                    var table = new FamilyTable();
                    var places = list.Index().ToDictionary(p => p.Item, p => p.Index);
                    var expected = a.Select(s => list.Where(l => (s >> l & 1) != 0).ToArray())
                        .OrderBy(s => s.Sum(l => cost[l]))
                        .ThenBy(s => string.Join(",", s.Select(l => places[l])), StringComparer.Ordinal);
                    new CheapestSets(table, list, l => cost[l])
                        .Of(Build(table, a))
                        .Select(s => string.Join(",", s))
                        .Should()
                        .Equal(expected.Select(s => string.Join(",", s)));
                }
            );

    [Fact]
    public void A_huge_family_is_counted_and_its_first_sets_are_had_at_once()
    {
        var table = new DiagramTable();
        var pairs = Enumerable.Range(0, 100);
        var f = table.AllOf(pairs.Select(i => table.Or(table.Variable(2 * i), table.Variable(2 * i + 1))));
        var minimal = new MinimalSets(table, f);
        minimal.Count.Should().Be(BigInteger.One << 100);
        minimal
            .Cheapest([.. Enumerable.Range(0, 200)])
            .Take(2)
            .Last()
            .Should()
            .Equal(pairs.Select(i => 2 * i + (i == 99 ? 1 : 0)));
    }

    /// <summary>Pairs whose members lie far apart take 2^40 nodes when the diagram is turned into the list's order.</summary>
    [Fact]
    public void The_order_of_the_list_costs_no_nodes()
    {
        var table = new DiagramTable(budget: 100_000);
        var pairs = Enumerable.Range(0, 40);
        var f = table.AllOf(pairs.Select(i => table.Or(table.Variable(2 * i), table.Variable(2 * i + 1))));
        int[] list = [.. pairs.Select(i => 2 * i + 1), .. pairs.Select(i => 2 * i)];
        var sets = new MinimalSets(table, f).Cheapest(list).Take(3).ToArray();
        sets[0].Should().Equal(list[..40]);
        sets[1].Should().Equal([.. list[..39], list[79]]);
        sets[2].Should().Equal([.. list[..38], list[39], list[78]]);
    }

    /// <summary>Thousands of sets, so that the table grows; then each again: the same families, and no node more.</summary>
    [Fact]
    public void Equal_families_are_one()
    {
        var table = new FamilyTable();
        var dice = new System.Random(1);
        int[][] sets =
        [
            .. Enumerable.Range(0, 1500).Select(i => new[] { i % 7, 10 + i % 40, 100 + dice.Next(2000) }),
        ];
        var families = sets.Select(table.Of).ToArray();
        var made = table.NodesMade;
        made.Should().BeGreaterThan(2048);
        sets.Select(table.Of).Should().Equal(families);
        table.NodesMade.Should().Be(made);
        for (var i = 0; i < sets.Length; i++)
            table.Support(families[i]).Should().Equal(sets[i]);
    }

    /// <summary>One of each of sixty pairs: 2^60 sets in few nodes, and no operation visits a node twice.</summary>
    [Fact]
    public void Operations_on_a_huge_family_are_had_at_once()
    {
        var table = new FamilyTable();
        var (f, g) = (OneOfEach(first: 0), OneOfEach(first: 1));
        var whole = BigInteger.One << 60;
        table.Count(f).Should().Be(whole);
        table.Count(table.Union(f, g)).Should().Be(2 * whole);
        table.Minimal(f).Should().Be(f);
        table.FreeOf(f, g).Should().Be(f);
        table.Count(table.Without(f, 4 * 59)).Should().Be(whole / 2);
        table.Count(table.With(f, 4 * 59)).Should().Be(whole / 2);

        Family OneOfEach(int first) =>
            Enumerable
                .Range(0, 60)
                .Reverse()
                .Aggregate(
                    Family.Nothing,
                    (rest, pair) =>
                        table.Make(
                            4 * pair + first,
                            table.Make(4 * pair + first + 2, Family.None, rest),
                            rest
                        )
                );
    }

    [Fact]
    public void A_cost_of_ones_own_decides_which_set_is_cheapest()
    {
        var table = new DiagramTable();
        var f = table.Or(table.Variable(0), table.And(table.Variable(1), table.Variable(2)));
        var sets = new MinimalSets(table, f);
        sets.Cheapest([0, 1, 2]).First().Should().Equal(0);
        sets.Cheapest([0, 1, 2], level => level == 0 ? 5 : 2).First().Should().Equal(1, 2);
    }

    [Fact]
    public void A_spent_budget_and_a_cancelled_search_end_it()
    {
        var small = new FamilyTable(budget: 30);
        var build = () => Levels.Select(l => Build(small, [1 << l, 63 ^ 1 << l, l + 7])).ToArray();
        build.Should().Throw<DiagramLimitException>();
        small.NodesMade.Should().Be(30);
        var stopped = new FamilyTable(cancellation: new CancellationToken(canceled: true));
        var chain = () => Enumerable.Range(0, 10_000).Select(l => stopped.Of([l, l + 1])).ToArray();
        chain.Should().Throw<OperationCanceledException>();
        stopped.NodesMade.Should().Be(1 << 12, "it is looked at now and then");
    }

    private static bool Contains(int large, int small) => (large & small) == small;

    private static IEnumerable<int> Minimal(int[] sets) =>
        sets.Where(s => !sets.Any(t => t != s && Contains(s, t)));

    private static Family Build(FamilyTable table, IEnumerable<int> sets) =>
        sets.Select(s => table.Of(Levels.Where(l => (s >> l & 1) != 0))).Aggregate(Family.None, table.Union);

    private static Diagram Cube(DiagramTable table, int set) =>
        table.Cube(Levels.Select(l => KeyValuePair.Create(l, (set >> l & 1) != 0)));

    private static IEnumerable<int> Read(FamilyTable table, Family family)
    {
        return Under(family).Order();

        IEnumerable<int> Under(Family f) =>
            f.IsNone ? []
            : f.IsConstant ? [0]
            : Under(table.Low(f)).Concat(Under(table.High(f)).Select(s => s | 1 << table.Level(f)));
    }
}
