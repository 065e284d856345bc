using System.Numerics;
using Coldpath.Circuit.Diagrams;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Diagrams;

/// <summary>Every operation against truth tables of six variables, held as 64-bit words.</summary>
public sealed class DiagramTableTests
{
    private const int Width = 6;
    private static readonly int[] Levels = [.. Enumerable.Range(0, Width)];
    private static readonly Gen<ulong> Truth = Gen.OneOf(
        Gen.ULong,
        Gen.Select(Gen.ULong, Gen.ULong, Gen.ULong, (a, b, c) => a & b & c),
        Gen.Int[0, Width - 1].Select(VariableTruth)
    );

    [Fact, Trait("Set", "engine")]
    public void Connectives_agree_with_truth_tables() =>
        Gen.Select(Truth, Truth, Truth)
            .Sample(
                (a, b, c) =>
                {
                    var table = new DiagramTable();
                    var (f, g, h) = (Build(table, a), Build(table, b), Build(table, c));
                    Read(table, table.And(f, g)).Should().Be(a & b);
                    Read(table, table.Or(f, g)).Should().Be(a | b);
                    Read(table, table.Xor(f, g)).Should().Be(a ^ b);
                    Read(table, table.Implies(f, g)).Should().Be(~a | b);
                    Read(table, table.Equivalent(f, g)).Should().Be(~(a ^ b));
                    Read(table, table.Except(f, g)).Should().Be(a & ~b);
                    Read(table, !f).Should().Be(~a);
                    Read(table, table.IfThenElse(f, g, h)).Should().Be((a & b) | (~a & c));
                    table.Meet(f, g).Should().Be((a & b) != 0);
                    table.Entails(f, g).Should().Be((a & ~b) == 0);
                }
            );

    [Fact, Trait("Set", "engine")]
    public void Equal_functions_are_equal_diagrams() =>
        Gen.Select(Truth, Truth, Truth)
            .Sample(
                (a, b, c) =>
                {
                    var table = new DiagramTable();
                    var (f, g, h) = (Build(table, a), Build(table, b), Build(table, c));
                    table
                        .IfThenElse(f, g, h)
                        .Should()
                        .Be(table.Or(table.And(f, g), table.And(!f, h)))
                        .And.Be(Build(table, (a & b) | (~a & c)));
                    table.Xor(f, g).Should().Be(table.Except(table.Or(f, g), table.And(f, g)));
                }
            );

    [Fact, Trait("Set", "engine")]
    public void Moves_agree_with_truth_tables() =>
        Gen.Select(Truth, Truth, Gen.Int[0, Width - 1], Gen.Int[1, 2], Gen.Int[0, 3])
            .Sample(
                (a, b, first, bits, value) =>
                {
                    var table = new DiagramTable();
                    var (states, source) = (Build(table, a), Build(table, b));
                    var levels = Levels.Skip(first).Take(bits).ToArray();
                    var code = levels
                        .Select((level, i) => KeyValuePair.Create(level, (value >> i & 1) != 0))
                        .ToArray();
                    var coded = code.Aggregate(
                        ulong.MaxValue,
                        (t, l) => t & (l.Value ? VariableTruth(l.Key) : ~VariableTruth(l.Key))
                    );
                    var image = Quantify(a & b, levels, (x, y) => x | y) & coded;
                    var preimage = Quantify(a & coded, levels, (x, y) => x | y) & b;
                    var (cube, to) = (table.Cube(levels), table.Cube(code));
                    Read(table, table.WithImage(states, source, cube, to)).Should().Be(a | image);
                    Read(table, table.WithPreimage(states, source, cube, to)).Should().Be(a | preimage);
                }
            );

    [Fact, Trait("Set", "engine")]
    public void Quantifiers_and_cofactors_agree_with_truth_tables() =>
        Gen.Select(Truth, Truth, Gen.Int[0, 63], Gen.Int[0, 63])
            .Sample(
                (a, b, chosen, values) =>
                {
                    var table = new DiagramTable();
                    var (f, g) = (Build(table, a), Build(table, b));
                    var levels = Levels.Where(level => (chosen >> level & 1) != 0).ToArray();
                    var cube = table.Cube(levels);
                    Read(table, table.Exists(f, cube)).Should().Be(Quantify(a, levels, (x, y) => x | y));
                    Read(table, table.ForAll(f, cube)).Should().Be(Quantify(a, levels, (x, y) => x & y));
                    Read(table, table.AndExists(f, g, cube))
                        .Should()
                        .Be(Quantify(a & b, levels, (x, y) => x | y));

                    var literals = table.Cube(
                        levels.Select(level => KeyValuePair.Create(level, (values >> level & 1) != 0))
                    );
                    var expected = levels.Aggregate(a, (t, l) => Cofactor(t, l, (values >> l & 1) != 0));
                    Read(table, table.Restrict(f, literals)).Should().Be(expected);
                    foreach (var level in levels.Take(1))
                    {
                        Read(table, table.Restrict(f, level, true)).Should().Be(Cofactor(a, level, true));
                        Read(table, table.Substitute(f, level, g))
                            .Should()
                            .Be((b & Cofactor(a, level, true)) | (~b & Cofactor(a, level, false)));
                    }
                }
            );

    [Fact, Trait("Set", "engine")]
    public void Count_and_support_agree_with_truth_tables() =>
        Truth.Sample(a =>
        {
            var table = new DiagramTable();
            var f = Build(table, a);
            table.Count(f, Levels).Should().Be(BitOperations.PopCount(a));
            table.Count(f, [.. Levels, 9, 40]).Should().Be(4 * BitOperations.PopCount(a));
            table.Support(f).Should().Equal(Levels.Where(l => Cofactor(a, l, true) != Cofactor(a, l, false)));
        });

    [Fact, Trait("Set", "engine")]
    public void Pick_takes_the_first_satisfying_assignment() =>
        Truth.Sample(a =>
        {
            var table = new DiagramTable();
            var picked = table.Pick(Build(table, a), Levels);
            if (a == 0)
                picked.Should().BeNull();
            else
                picked!.Select(p => p.Value).Should().Equal(FirstRow(a));
        });

    [Fact, Trait("Set", "engine")]
    public void Upward_closure_agrees_with_truth_tables() =>
        Truth.Sample(a =>
        {
            var table = new DiagramTable();
            var rows = Rows(a).ToArray();
            var closure = Enumerable.Range(0, 64).Where(r => rows.Any(s => (r & s) == s));
            Read(table, table.UpwardClosure(Build(table, a)))
                .Should()
                .Be(closure.Aggregate(0ul, (t, s) => t | 1ul << s));
        });

    [Fact, Trait("Set", "engine")]
    public void Downward_closure_agrees_with_truth_tables() =>
        Truth.Sample(a =>
        {
            var table = new DiagramTable();
            var rows = Rows(a).ToArray();
            var closure = Enumerable.Range(0, 64).Where(r => rows.Any(s => (r & s) == r));
            Read(table, table.DownwardClosure(Build(table, a)))
                .Should()
                .Be(closure.Aggregate(0ul, (t, s) => t | 1ul << s));
        });

    [Fact, Trait("Set", "engine")]
    public void At_most_so_many_are_true()
    {
        var table = new DiagramTable();
        foreach (var most in Enumerable.Range(0, Width + 2))
        foreach (var chosen in Enumerable.Range(0, 64))
        {
            var levels = Levels.Where(l => (chosen >> l & 1) != 0).Reverse();
            var expected = Enumerable.Range(0, 64).Where(r => int.PopCount(r & chosen) <= most);
            Read(table, table.AtMost(most, levels))
                .Should()
                .Be(expected.Aggregate(0ul, (t, r) => t | 1ul << r));
        }
    }

    [Fact, Trait("Set", "engine")]
    public void A_function_within_others_equals_it_there_and_leaves_out_what_a_cube_fixes() =>
        Gen.Select(Truth, Truth, Gen.Int[0, 63], Gen.Int[0, 63])
            .Sample(
                (a, b, chosen, values) =>
                {
                    var table = new DiagramTable();
                    var (f, care) = (Build(table, a), Build(table, b));
                    var cube = table.Cube(
                        Levels
                            .Where(level => (chosen >> level & 1) != 0)
                            .Select(level => KeyValuePair.Create(level, (values >> level & 1) != 0))
                    );
                    table.IsCube(cube).Should().BeTrue();
                    table.Within(f, cube).Should().Be(table.Restrict(f, cube));
                    table.IsCube(care).Should().Be(IsCube(b));
                    (Read(table, table.Within(f, care)) & b).Should().Be(a & b);
                    if (!IsCube(b))
                        table.Within(f, care).Should().Be(table.And(f, care));
                }
            );

    /// <summary>As many nodes as there are different cofactors that their level decides, a function and its contrary one.</summary>
    [Fact, Trait("Set", "engine")]
    public void A_diagram_has_the_nodes_that_it_needs() =>
        Gen.Select(Truth, Truth)
            .Sample(
                (a, b) =>
                {
                    var table = new DiagramTable();
                    var (f, g) = (Build(table, a), Build(table, b));
                    table.NodeCount(f).Should().Be(Nodes([a]));
                    table.NodeCount(f, g).Should().Be(Nodes([a, b]));
                    table.NodeCount(Diagram.True).Should().Be(0);
                }
            );

    [Fact]
    public void The_tables_grow_without_losing_a_node() => ParityGrows(3000);

    /// <summary>The same at a glance.</summary>
    [Fact, Trait("Set", "engine")]
    public void Small_tables_grow_so_too() => ParityGrows(300);

    private static void ParityGrows(int levels)
    {
        var table = new DiagramTable(capacity: 256);
        var parity = Enumerable
            .Range(0, levels)
            .Aggregate(Diagram.False, (f, l) => table.Xor(f, table.Variable(l)));
        table.NodeCount(parity).Should().Be(levels);
        table.Count(parity, [.. Enumerable.Range(0, levels)]).Should().Be(BigInteger.One << levels - 1);
        var made = table.NodesMade;
        Enumerable
            .Range(0, levels)
            .Aggregate(Diagram.False, (f, l) => table.Xor(f, table.Variable(l)))
            .Should()
            .Be(parity);
        table.NodesMade.Should().Be(made, "no node is made twice");
        Enumerable
            .Range(0, levels)
            .Reverse()
            .Aggregate(Diagram.False, (f, l) => table.Xor(table.Variable(l), f))
            .Should()
            .Be(parity);
    }

    [Fact, Trait("Set", "engine")]
    public void A_spent_budget_ends_the_search()
    {
        var table = new DiagramTable(budget: 1000);
        var build = () => Enumerable.Range(0, 2000).Select(table.Variable).ToArray();
        build.Should().Throw<DiagramLimitException>();
        table.NodesMade.Should().Be(1000);
        table.Affords(999).Should().BeTrue();
        table.Affords(1000).Should().BeFalse();
    }

    [Fact, Trait("Set", "engine")]
    public void A_cancelled_search_ends()
    {
        using var source = new CancellationTokenSource();
        var table = new DiagramTable(cancellation: source.Token);
        source.Cancel();
        var build = () => Enumerable.Range(0, 20_000).Select(table.Variable).ToArray();
        build.Should().Throw<OperationCanceledException>();
        table.NodesMade.Should().Be(1 << 12, "it is looked at now and then");
    }

    [Fact, Trait("Set", "engine")]
    public void What_makes_no_sense_is_refused()
    {
        var table = new DiagramTable();
        var f = table.And(table.Variable(1), table.Variable(2));
        Action[] senseless =
        [
            () => _ = new DiagramTable(budget: 0),
            () => _ = new FamilyTable(budget: 0),
            () => table.Variable(-1),
            () => table.Count(f, [1]),
            () => table.Pick(f, [2, 3]),
            () => new MinimalSets(table, f).Cheapest([1]),
        ];
        foreach (var ask in senseless)
            ask.Should().Throw<ArgumentException>();
    }

    /// <summary>Its rows are all that agree with it where it is constant.</summary>
    private static bool IsCube(ulong truth)
    {
        var rows = Rows(truth).ToArray();
        if (rows.Length == 0)
            return false;
        var (ones, zeros) = (rows.Aggregate((x, y) => x & y), rows.Aggregate((x, y) => x | y) ^ 63);
        return rows.Length == 1 << Width - int.PopCount(ones | zeros);
    }

    private static int Nodes(IEnumerable<ulong> truths)
    {
        var functions = truths.ToHashSet();
        var nodes = 0;
        foreach (var level in Levels)
        {
            nodes += functions
                .Where(t => Cofactor(t, level, false) != Cofactor(t, level, true))
                .Select(t => Math.Min(t, ~t))
                .Distinct()
                .Count();
            functions =
            [
                .. functions.SelectMany(t => new[] { Cofactor(t, level, false), Cofactor(t, level, true) }),
            ];
        }
        return nodes;
    }

    private static ulong VariableTruth(int level) =>
        Enumerable.Range(0, 64).Aggregate(0ul, (t, row) => (row >> level & 1) == 0 ? t : t | 1ul << row);

    private static Diagram Build(DiagramTable table, ulong truth) => Build(table, truth, 0, 0);

    private static Diagram Build(DiagramTable table, ulong truth, int level, int row) =>
        level == Width
            ? ((truth >> row & 1) != 0 ? Diagram.True : Diagram.False)
            : table.IfThenElse(
                table.Variable(level),
                Build(table, truth, level + 1, row | 1 << level),
                Build(table, truth, level + 1, row)
            );

    private static ulong Read(DiagramTable table, Diagram f)
    {
        var truth = 0ul;
        for (var row = 0; row < 64; row++)
            if (table.Evaluate(f, [.. Levels.Select(l => (row >> l & 1) != 0)]))
                truth |= 1ul << row;
        return truth;
    }

    private static ulong Cofactor(ulong truth, int level, bool value)
    {
        var result = 0ul;
        for (var row = 0; row < 64; row++)
        {
            var source = value ? row | 1 << level : row & ~(1 << level);
            result |= (truth >> source & 1) << row;
        }
        return result;
    }

    private static ulong Quantify(ulong truth, int[] levels, Func<ulong, ulong, ulong> join) =>
        levels.Aggregate(truth, (t, l) => join(Cofactor(t, l, false), Cofactor(t, l, true)));

    private static IEnumerable<int> Rows(ulong truth) =>
        Enumerable.Range(0, 64).Where(row => (truth >> row & 1) != 0);

    private static bool[] FirstRow(ulong truth) =>
        Rows(truth)
            .Select(row => Levels.Select(l => (row >> l & 1) != 0).ToArray())
            .OrderBy(
                row => row,
                Comparer<bool[]>.Create(
                    (x, y) => x.Zip(y).Select(p => p.First.CompareTo(p.Second)).FirstOrDefault(c => c != 0)
                )
            )
            .First();
}
