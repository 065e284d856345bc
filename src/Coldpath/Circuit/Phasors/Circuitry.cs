using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>An impedance with a source in it: the current from A to B is (Va − Vb + emf) / ohms.</summary>
/// <param name="Name">An element id, or a supply's conductor.</param>
/// <param name="A">Number of a node.</param>
/// <param name="B">Number of a node.</param>
/// <param name="Ohms">Never zero; infinite when it is open and joins nothing.</param>
/// <param name="Emf">Volts; drives current from A to B.</param>
internal sealed record Branch(string Name, int A, int B, Complex Ohms, Complex Emf = default)
{
    public bool IsOpen => double.IsInfinity(Ohms.Real);
}

/// <summary>Two windings on one core: V(A, B) = ratio × V(C, D), but for the ohms, seen from A and B.</summary>
internal sealed record Transformation(string Name, int A, int B, int C, int D, double Ratio, Complex Ohms);

/// <summary>A diode: it conducts from A to K once the voltage reaches its drop, and nothing the other way.</summary>
internal sealed record Valve(string Name, int A, int K, double Drop);

/// <summary>What is solved: nodes, numbered from 0, and what joins them, all at one frequency.</summary>
/// <param name="Nodes">How many.</param>
/// <param name="Earth">The node that volts are measured to, where it is joined.</param>
internal sealed record Circuitry(
    int Nodes,
    int Earth,
    IReadOnlyList<Branch> Branches,
    IReadOnlyList<Transformation> Transformations,
    IReadOnlyList<Valve> Valves
);
