using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// Volts of nodes and currents of branches by nodal analysis, each galvanically joined part of the circuit with a
/// reference node of its own, so that a floating part has voltages within but none to the others.
/// </summary>
internal static class NodalAnalysis
{
    /// <summary>Null when the circuit contradicts itself (its matrix is singular).</summary>
    public static NodalSolution? Solve(Circuitry circuit) =>
        circuit.Valves.Count == 0 ? SolveLinear(circuit) : Valves.Solve(circuit);

    /// <summary>Valves left out.</summary>
    public static NodalSolution? SolveLinear(Circuitry circuit)
    {
        var parts = PartsOf(circuit);
        var unknowns = new int[circuit.Nodes];
        var count = 0;
        for (var node = 0; node < circuit.Nodes; node++)
            unknowns[node] = node == parts.Reference(node) ? -1 : count++;
        var system = new NodalSystem(unknowns, count, circuit.Transformations.Count);
        foreach (var branch in circuit.Branches.Where(b => !b.IsOpen))
            system.Add(branch);
        foreach (var transformation in circuit.Transformations)
            system.Add(transformation);
        if (system.Solve() is not { } solution)
            return null;
        var volts = unknowns.Select(u => u < 0 ? Complex.Zero : solution[u]).ToArray();
        return new(
            volts,
            [.. Enumerable.Range(0, circuit.Nodes).Select(parts.Reference)],
            circuit.Earth,
            [.. circuit.Branches.Select(b => b.IsOpen ? 0 : (volts[b.A] - volts[b.B] + b.Emf) / b.Ohms)],
            solution[count..]
        );
    }

    private static Partition PartsOf(Circuitry circuit)
    {
        var parts = new Partition(circuit.Nodes, circuit.Earth);
        foreach (var branch in circuit.Branches.Where(b => !b.IsOpen))
            parts.Join(branch.A, branch.B);
        foreach (var t in circuit.Transformations)
        {
            parts.Join(t.A, t.B);
            parts.Join(t.C, t.D);
        }
        return parts;
    }
}

/// <summary>What the analysis of a circuit says.</summary>
/// <param name="volts">Of each node to its part's reference.</param>
/// <param name="references">For each node the reference of its part.</param>
/// <param name="earth">The node of the earth.</param>
/// <param name="currents">Of each branch, from A to B, in amperes.</param>
/// <param name="windings">Of each transformation, into A, in amperes.</param>
internal sealed class NodalSolution(
    Complex[] volts,
    int[] references,
    int earth,
    Complex[] currents,
    Complex[] windings
)
{
    public IReadOnlyList<Complex> Currents => currents;

    public IReadOnlyList<Complex> Windings => windings;

    /// <summary>Volts from one node to another; null when nothing joins the two.</summary>
    public Complex? Between(int a, int b) => references[a] == references[b] ? volts[a] - volts[b] : null;

    /// <summary>Volts to earth; null when the node floats.</summary>
    public Complex? ToEarth(int node) => Between(node, earth);
}
