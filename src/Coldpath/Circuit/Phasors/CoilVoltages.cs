using System.Numerics;
using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// The voltage across a coil from every corner of the bands that ratings leave open. Supplies that are not in step are solved one
/// after another; their volts then add up to anything between sum and difference. With alternating voltage a diode is not solved.
/// </summary>
internal static class CoilVoltages
{
    /// <summary>More corners than this are not tried: then nobody can say.</summary>
    private const int MostCorners = 4096;

    /// <summary>
    /// Volts from which a diode may conduct, that it is taken to drop, and by which the drop may differ from that: from
    /// Schottky diodes to two in one case; common practice. A resistive circuit has no gain: so much and no more may every
    /// voltage in it differ.
    /// </summary>
    private const double LeastDrop = 0.2;
    public const double Drop = 0.7;
    private const double Spread = 0.8;

    private static readonly Complex[] DeadSupply = [new(Impedances.Solid, 0), Impedances.Open];

    public static CoilVoltage Of(CoilCircuit circuit, int a, int b)
    {
        if (circuit.Unknown is { } reason)
            return CoilVoltage.Of(reason);
        var groups = Groups(circuit).ToArray();
        if (groups.Length == 0)
            return new(0, 0, null);
        if (groups.Any(g => !g.Direct) && circuit.Links.Any(l => l.Type == ElementType.Diode))
            return CoilVoltage.Of("a diode on alternating voltage is not solved");
        if (groups.Any(g => g.Direct) && circuit.Transformers.Any())
            return CoilVoltage.Of("a transformer on direct voltage is not solved");
        var (low, sum) = (0.0, 0.0);
        foreach (var group in groups)
        {
            if (Range(circuit, a, b, group) is not { } range)
                return CoilVoltage.Of("too much of its circuit is not known");
            low = Math.Max(range.Low - sum, low - range.High);
            sum += range.High;
        }
        return new(Math.Max(low, 0), sum, null);
    }

    private static IEnumerable<(bool Direct, string Group)> Groups(CoilCircuit circuit) =>
        circuit
            .Supplies.Select(s => circuit.Conducting.Network.Sources.BySupply[s][0].Supply)
            .Select(s => (s.Direct, s.Direct ? "" : s.Group))
            .Distinct();

    private static (double Low, double High)? Range(CoilCircuit circuit, int a, int b, (bool Direct, string Group) group)
    {
        var links = circuit.Links.Where(l => l.Type != ElementType.Diode).ToArray();
        var corners = links.Select(l => Impedances.Of(circuit.Conducting, l, group.Direct)).ToArray();
        var dead = DeadPairs(circuit).ToArray();
        var diodes = new HashSet<Valve>();
        var sizes = corners.Select(c => c.Count).Concat(dead.Select(_ => DeadSupply.Length)).ToArray();
        if (sizes.Aggregate(1L, (n, size) => Math.Min(n * size, MostCorners + 1)) > MostCorners)
            return null;
        var (low, high, first) = (double.PositiveInfinity, 0.0, Complex.Zero);
        foreach (var corner in Corners(sizes))
        {
            var builder = Frame(circuit, group);
            for (var i = 0; i < links.Length; i++)
                builder.Add(links[i], corners[i][corner[i]]);
            for (var i = 0; i < dead.Length; i++)
                builder.AddDead(dead[i].A, dead[i].B, DeadSupply[corner[links.Length + i]]);
            var (from, to) = (builder.Node(a), builder.Node(b));
            var circuitry = builder.Build(circuit.Conducting.Network.Mesh.Earth);
            var solution = NodalAnalysis.Solve(circuitry);
            // A coil that itself may be open has no voltage of its own where nothing else joins its sides.
            if (solution is null)
                return null;
            var volts = solution.Between(from, to) ?? 0;
            first = first == 0 ? volts : first;
            // Between two corners of opposite sign there is one with no voltage at all.
            low = (volts * Complex.Conjugate(first)).Real < 0 ? 0 : Math.Min(low, volts.Magnitude);
            high = Math.Max(high, volts.Magnitude);
            diodes.UnionWith(circuitry.Valves.Where(v => solution.Between(v.A, v.K)?.Real > LeastDrop));
        }
        return (Math.Max(low - diodes.Count * Spread, 0), high + diodes.Count * Spread);
    }

    private static CircuitryBuilder Frame(CoilCircuit circuit, (bool Direct, string Group) group)
    {
        var conducting = circuit.Conducting;
        var builder = new CircuitryBuilder(conducting.Network, conducting.Component);
        foreach (var supply in circuit.Supplies)
        {
            var on = conducting.Network.Sources.BySupply[supply].Where(s => conducting.Holds(s.On)).ToArray();
            var own = on[0].Supply;
            builder.Add(on, own.Direct == group.Direct && (own.Direct || own.Group == group.Group));
        }
        foreach (var transformer in circuit.Transformers.Where(_ => !group.Direct))
            builder.Add(transformer);
        foreach (var diode in circuit.Links.Where(l => l.Type == ElementType.Diode))
            builder.AddValve(diode, Drop);
        return builder;
    }

    private static IEnumerable<(Source A, Source B)> DeadPairs(CoilCircuit circuit) =>
        from supply in circuit.DeadSupplies
        let sources = circuit.Conducting.Network.Sources.BySupply[supply]
        from source in sources.Skip(1)
        where !circuit.Transformers.Any(t => t.Output == sources[0].Supply)
        select (sources[0], source);

    /// <summary>Every choice of one out of each size, the first place turning fastest.</summary>
    private static IEnumerable<int[]> Corners(int[] sizes)
    {
        var corner = new int[sizes.Length];
        while (true)
        {
            yield return corner;
            var place = 0;
            while (place < sizes.Length && ++corner[place] == sizes[place])
                corner[place++] = 0;
            if (place == sizes.Length)
                yield break;
        }
    }
}
