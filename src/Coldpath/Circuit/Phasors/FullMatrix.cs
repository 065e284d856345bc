using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>Gauss's elimination of a full complex matrix, with the largest entry of the column as pivot.</summary>
internal static class FullMatrix
{
    /// <summary>Below this part of the largest entry of all, what is left is rounding.</summary>
    private const double Least = 1e-15;

    /// <summary>The solution; null when the matrix is singular. Matrix and right side are used up.</summary>
    public static Complex[]? Solve(Complex[,] matrix, Complex[] right)
    {
        var size = right.Length;
        var floor = Least * Largest(matrix);
        for (var step = 0; step < size; step++)
        {
            var pivot = PivotOf(matrix, step, size);
            if (Size(matrix[pivot, step]) <= floor)
                return null;
            Swap(matrix, right, step, pivot);
            for (var row = step + 1; row < size; row++)
                if (matrix[row, step] != Complex.Zero)
                    Subtract(matrix, right, step, row);
        }
        for (var row = size - 1; row >= 0; row--)
        {
            for (var column = row + 1; column < size; column++)
                right[row] -= matrix[row, column] * right[column];
            right[row] /= matrix[row, row];
        }
        return right;
    }

    /// <summary>As good as the magnitude to tell large from small.</summary>
    private static double Size(Complex value) => Math.Abs(value.Real) + Math.Abs(value.Imaginary);

    private static double Largest(Complex[,] matrix)
    {
        var largest = 0.0;
        foreach (var value in matrix)
            largest = Math.Max(largest, Size(value));
        return largest;
    }

    private static int PivotOf(Complex[,] matrix, int step, int size)
    {
        var pivot = step;
        for (var row = step + 1; row < size; row++)
            if (Size(matrix[row, step]) > Size(matrix[pivot, step]))
                pivot = row;
        return pivot;
    }

    private static void Swap(Complex[,] matrix, Complex[] right, int a, int b)
    {
        if (a == b)
            return;
        (right[a], right[b]) = (right[b], right[a]);
        for (var column = 0; column < right.Length; column++)
            (matrix[a, column], matrix[b, column]) = (matrix[b, column], matrix[a, column]);
    }

    private static void Subtract(Complex[,] matrix, Complex[] right, int step, int row)
    {
        var factor = matrix[row, step] / matrix[step, step];
        for (var column = step; column < right.Length; column++)
            matrix[row, column] -= factor * matrix[step, column];
        right[row] -= factor * right[step];
    }
}
