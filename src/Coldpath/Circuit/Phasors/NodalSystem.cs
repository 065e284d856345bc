using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>The equations: currents at each node that is no reference, then one for each transformation.</summary>
/// <param name="unknowns">For each node its unknown, −1 for a reference.</param>
/// <param name="nodes">How many are none.</param>
/// <param name="transformations">How many will be added.</param>
internal sealed class NodalSystem(int[] unknowns, int nodes, int transformations)
{
    /// <summary>Up to here a full matrix is the faster one.</summary>
    private const int Small = 40;

    private readonly Complex[,]? full = IsSmall(nodes, transformations)
        ? new Complex[nodes + transformations, nodes + transformations]
        : null;

    private readonly Dictionary<int, Complex>[] sparse = IsSmall(nodes, transformations)
        ? []
        : [.. Enumerable.Range(0, nodes + transformations).Select(_ => new Dictionary<int, Complex>())];

    private readonly Complex[] right = new Complex[nodes + transformations];
    private int added;

    public void Add(Branch branch)
    {
        var admittance = 1 / branch.Ohms;
        var (a, b) = (unknowns[branch.A], unknowns[branch.B]);
        Stamp(a, a, admittance);
        Stamp(b, b, admittance);
        Stamp(a, b, -admittance);
        Stamp(b, a, -admittance);
        Drive(a, -branch.Emf * admittance);
        Drive(b, branch.Emf * admittance);
    }

    /// <summary>Its unknown is the current into A; ratio times as much leaves at C.</summary>
    public void Add(Transformation t)
    {
        var current = nodes + added++;
        foreach (var (node, factor) in new[] { (t.A, 1.0), (t.B, -1.0), (t.C, -t.Ratio), (t.D, t.Ratio) })
        {
            Stamp(unknowns[node], current, factor);
            Stamp(current, unknowns[node], factor);
        }
        Stamp(current, current, -t.Ohms);
    }

    /// <summary>Null when there is no one solution.</summary>
    public Complex[]? Solve() =>
        full is null ? SparseLu.Factor(sparse)?.Solve(right) : FullMatrix.Solve(full, right);

    private static bool IsSmall(int nodes, int transformations) => nodes + transformations <= Small;

    private void Stamp(int row, int column, Complex value)
    {
        if (row < 0 || column < 0)
            return;
        if (full is null)
            sparse[row][column] = sparse[row].GetValueOrDefault(column) + value;
        else
            full[row, column] += value;
    }

    private void Drive(int row, Complex value)
    {
        if (row >= 0)
            right[row] += value;
    }
}
