using System.Numerics;
using Coldpath.Circuit.Phasors;
using FluentAssertions;
using MathNet.Numerics.LinearAlgebra.Complex;
using Xunit;

namespace Coldpath.Tests.Circuit.Phasors;

/// <summary>The sparse factors against MathNet's dense ones.</summary>
public class SparseLuTests
{
    [Theory]
    [InlineData(1, 4)]
    [InlineData(2, 20)]
    [InlineData(3, 60)]
    [InlineData(4, 250)]
    public void Solves_as_the_dense_factors_do(int seed, int size)
    {
        var random = new Random(seed);
        var (rows, right) = (Ladder(random, size), Numbers(random, size));
        var dense = new DenseMatrix(size);
        for (var row = 0; row < size; row++)
            foreach (var (column, value) in rows[row])
                dense[row, column] = value;

        var expected = dense.LU().Solve(new DenseVector(right));
        var solution = SparseLu.Factor(rows)!.Solve([.. right]);

        var scale = expected.Max(v => v.Magnitude);
        for (var i = 0; i < size; i++)
            (solution[i] - expected[i]).Magnitude.Should().BeLessThan(1e-8 * scale);
    }

    [Fact]
    public void Needs_a_pivot_off_the_diagonal()
    {
        Dictionary<int, Complex>[] rows = [new() { [1] = 2 }, new() { [0] = 4, [1] = 1 }];

        SparseLu.Factor(rows)!.Solve([6, 7]).Should().Equal(1, 3);
    }

    [Fact]
    public void A_singular_matrix_has_no_factors()
    {
        Dictionary<int, Complex>[] rows = [new() { [0] = 1, [1] = 2 }, new() { [0] = 2, [1] = 4 }];

        SparseLu.Factor(rows).Should().BeNull();
    }

    /// <summary>Two thousand nodes in a mesh of forty by fifty: the fill stays far below the dense four million.</summary>
    [Fact]
    public void A_large_mesh_stays_sparse()
    {
        const int Wide = 40,
            High = 50;
        var branches = new List<Branch>();
        for (var node = 0; node < Wide * High; node++)
        {
            if (node % Wide > 0)
                branches.Add(new("", node - 1, node, 1));
            if (node >= Wide)
                branches.Add(new("", node - Wide, node, 1));
        }
        branches.Add(new("source", 0, Wide * High - 1, 1, 10));

        var solution = NodalAnalysis.Solve(new(Wide * High, 0, branches, [], []))!;

        foreach (var node in new[] { 1, 777, 1500 })
            Sum(node).Magnitude.Should().BeLessThan(1e-9, "what flows into a node flows out of it");
        solution.Currents[^1].Real.Should().BeGreaterThan(1);

        Complex Sum(int node) =>
            branches
                .Zip(solution.Currents)
                .Where(p => p.First.A == node || p.First.B == node)
                .Aggregate(Complex.Zero, (sum, p) => sum + (p.First.A == node ? p.Second : -p.Second));
    }

    /// <summary>A chain with a few ties across it, its impedances from a milliohm to a megohm.</summary>
    private static Dictionary<int, Complex>[] Ladder(Random random, int size)
    {
        var rows = Enumerable.Range(0, size).Select(_ => new Dictionary<int, Complex>()).ToArray();
        for (var node = 0; node < size; node++)
        {
            Stamp(node, -1);
            if (node > 0)
                Stamp(node, random.Next(4) > 0 ? node - 1 : random.Next(node));
        }
        return rows;

        void Stamp(int a, int b)
        {
            var admittance = Complex.FromPolarCoordinates(
                Math.Pow(10, random.NextDouble() * 6 - 4),
                random.NextDouble() - 0.5
            );
            Add(a, a, admittance);
            if (b < 0)
                return;
            Add(b, b, admittance);
            Add(a, b, -admittance);
            Add(b, a, -admittance);
        }

        void Add(int row, int column, Complex value) =>
            rows[row][column] = rows[row].GetValueOrDefault(column) + value;
    }

    private static Complex[] Numbers(Random random, int size) =>
        [.. Enumerable.Range(0, size).Select(_ => new Complex(random.NextDouble(), random.NextDouble()))];
}
