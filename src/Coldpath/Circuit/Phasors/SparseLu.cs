using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// Gauss's elimination of a sparse complex matrix: of the entries that are at least a tenth of the largest in their row,
/// the pivot is the one that fills in least (Markowitz's count), sought in the few shortest rows, the first in order among
/// equals.
/// </summary>
internal sealed class SparseLu
{
    /// <summary>A pivot is at least this part of the largest entry in its row.</summary>
    private const double Threshold = 0.1;

    /// <summary>Rows that are looked at for a pivot.</summary>
    private const int Looked = 4;

    /// <summary>Below this part of the largest entry of all, what is left is rounding.</summary>
    private const double Least = 1e-15;

    private readonly Dictionary<int, Complex>[] rows;
    private readonly SortedSet<int>[] columns;

    /// <summary>Rows that no pivot has been taken from, the shortest first.</summary>
    private readonly SortedSet<(int Length, int Row)> open;
    private readonly List<(int Row, int Column)> pivots = [];
    private readonly List<(int Pivot, int Row, Complex Factor)> factors = [];
    private readonly double floor;

    private SparseLu(Dictionary<int, Complex>[] rows)
    {
        this.rows = rows;
        columns = [.. rows.Select(_ => new SortedSet<int>())];
        for (var row = 0; row < rows.Length; row++)
            foreach (var column in rows[row].Keys)
                columns[column].Add(row);
        open = [.. rows.Select((entries, row) => (entries.Count, row))];
        floor = Least * rows.SelectMany(r => r.Values).Select(Complex.Abs).DefaultIfEmpty().Max();
    }

    /// <summary>The factors of a square matrix; null when it is singular.</summary>
    /// <param name="rows">For each row its entries by column; used up.</param>
    public static SparseLu? Factor(Dictionary<int, Complex>[] rows)
    {
        var lu = new SparseLu(rows);
        while (lu.open.Count > 0)
            if (lu.Best() is { } pivot)
                lu.Eliminate(pivot.Row, pivot.Column);
            else
                return null;
        return lu;
    }

    /// <summary>The solution for a right side, which is used up.</summary>
    public Complex[] Solve(Complex[] right)
    {
        foreach (var (pivot, row, factor) in factors)
            right[row] -= factor * right[pivot];
        var solution = new Complex[right.Length];
        for (var i = pivots.Count - 1; i >= 0; i--)
        {
            var (row, column) = pivots[i];
            var sum = right[row];
            foreach (var (other, value) in rows[row])
                if (other != column)
                    sum -= value * solution[other];
            solution[column] = sum / rows[row][column];
        }
        return solution;
    }

    private (int Row, int Column)? Best()
    {
        (int Row, int Column)? best = null;
        var least = long.MaxValue;
        foreach (var (length, row) in open.Take(Looked))
        {
            var largest = rows[row].Values.Select(Complex.Abs).DefaultIfEmpty().Max();
            if (largest <= floor)
                return null;
            foreach (var (column, value) in rows[row])
            {
                var fill = (length - 1L) * (columns[column].Count - 1);
                var first = fill == least && best?.Row == row && column < best?.Column;
                if ((fill < least || first) && Complex.Abs(value) >= Threshold * largest)
                    (best, least) = ((row, column), fill);
            }
        }
        return best;
    }

    private void Eliminate(int pivot, int column)
    {
        open.Remove((rows[pivot].Count, pivot));
        pivots.Add((pivot, column));
        foreach (var other in rows[pivot].Keys)
            columns[other].Remove(pivot);
        foreach (var row in columns[column])
        {
            open.Remove((rows[row].Count, row));
            Subtract(pivot, row, column);
            open.Add((rows[row].Count, row));
        }
        columns[column].Clear();
    }

    private void Subtract(int pivot, int row, int column)
    {
        var factor = rows[row][column] / rows[pivot][column];
        factors.Add((pivot, row, factor));
        rows[row].Remove(column);
        foreach (var (other, value) in rows[pivot])
        {
            if (other == column)
                continue;
            rows[row][other] = rows[row].GetValueOrDefault(other) - factor * value;
            columns[other].Add(row);
        }
    }
}
