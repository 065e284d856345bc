using System.Numerics;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// Which diodes conduct: of those that stand wrong the first is turned over until none does. For resistive circuits this
/// always ends (Murty's least index rule for complementarity problems).
/// </summary>
internal static class Valves
{
    /// <summary>Ohms of a diode that conducts, and of one that does not.</summary>
    private const double Conducting = 0.01;
    private const double Blocking = 1e9;

    /// <summary>Volts and amperes that are rounding.</summary>
    private const double Least = 1e-9;
    private const int MostTurns = 4096;

    public static NodalSolution? Solve(Circuitry circuit)
    {
        var on = new bool[circuit.Valves.Count];
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var linear = circuit with
            {
                Branches = [.. circuit.Branches, .. circuit.Valves.Select((v, i) => BranchOf(v, on[i]))],
                Valves = [],
            };
            if (NodalAnalysis.SolveLinear(linear) is not { } solution)
                return null;
            var wrong = Enumerable.Range(0, on.Length).FirstOrDefault(i => StandsWrong(i, solution), -1);
            if (wrong < 0)
                return solution;
            on[wrong] = !on[wrong];
        }
        return null;

        bool StandsWrong(int i, NodalSolution solution)
        {
            var valve = circuit.Valves[i];
            return on[i]
                ? solution.Currents[circuit.Branches.Count + i].Real < -Least
                : solution.Between(valve.A, valve.K)!.Value.Real > valve.Drop + Least;
        }
    }

    private static Branch BranchOf(Valve valve, bool on) =>
        on
            ? new(valve.Name, valve.A, valve.K, Conducting, -valve.Drop)
            : new(valve.Name, valve.A, valve.K, new Complex(Blocking, 0));
}
