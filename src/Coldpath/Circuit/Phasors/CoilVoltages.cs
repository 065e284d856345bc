using System.Globalization;
using System.Numerics;
using System.Text;
using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// The voltage across a coil from every corner of the bands that ratings leave open. Supplies that are not in step are solved one
/// after another; their volts then add up to anything between sum and difference. With alternating voltage a diode is not solved.
/// </summary>
internal sealed class CoilVoltages
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

    /// <summary>Volts that are rounding.</summary>
    private const double Least = 1e-6;

    private static readonly Complex[] DeadSupply = [new(Impedances.Solid, 0), Impedances.Open];

    private readonly Dictionary<string, (double Low, double High)?> known = [];

    public CoilVoltage Of(CoilCircuit circuit, int a, int b)
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

    private (double Low, double High)? Range(
        CoilCircuit circuit,
        int a,
        int b,
        (bool Direct, string Group) group
    )
    {
        var builder = Frame(circuit, group);
        var corners = new List<IReadOnlyList<Complex>>();
        foreach (var link in circuit.Links.Where(l => l.Type != ElementType.Diode))
        {
            corners.Add(Impedances.Of(circuit.Conducting, link, group.Direct));
            builder.Add(link, corners[^1][0]);
        }
        foreach (var (one, other) in DeadPairs(circuit))
        {
            corners.Add(DeadSupply);
            builder.AddDead(one, other, DeadSupply[0]);
        }
        var (from, to) = (builder.Node(a), builder.Node(b));
        var frame = builder.Build(circuit.Conducting.Network.Mesh.Earth);
        var key = KeyOf(frame, corners, from, to);
        if (!known.TryGetValue(key, out var range))
            known.Add(key, range = Range(frame, corners, from, to));
        return range;
    }

    /// <summary>The voltage between two nodes at every corner of the last of the frame's branches.</summary>
    private static (double Low, double High)? Range(
        Circuitry frame,
        List<IReadOnlyList<Complex>> corners,
        int from,
        int to
    )
    {
        if (corners.Aggregate(1L, (n, c) => Math.Min(n * c.Count, MostCorners + 1)) > MostCorners)
            return null;
        if (!IsDriven(frame, corners))
            return (0, 0);
        var (low, high, first) = (double.PositiveInfinity, 0.0, Complex.Zero);
        var diodes = new HashSet<Valve>();
        var branches = frame.Branches.ToArray();
        foreach (var corner in Corners([.. corners.Select(c => c.Count)]))
        {
            for (var i = 0; i < corner.Length; i++)
            {
                ref var branch = ref branches[branches.Length - corner.Length + i];
                branch = branch with { Ohms = corners[i][corner[i]] };
            }
            if (NodalAnalysis.Solve(frame with { Branches = branches }) is not { } solution)
                return null;
            // A coil that itself may be open has no voltage of its own where nothing else joins its sides.
            var volts = solution.Between(from, to) ?? 0;
            first = first == 0 ? volts : first;
            // Between two corners of opposite sign there is one with no voltage at all.
            low = (volts * Complex.Conjugate(first)).Real < 0 ? 0 : Math.Min(low, volts.Magnitude);
            high = Math.Max(high, volts.Magnitude);
            diodes.UnionWith(frame.Valves.Where(v => solution.Between(v.A, v.K)?.Real > LeastDrop));
        }
        return (Math.Max(low - diodes.Count * Spread, 0), high + diodes.Count * Spread);
    }

    /// <summary>
    /// Some element has a voltage with impedances of any finite size: where none has, none has with any others either.
    /// </summary>
    private static bool IsDriven(Circuitry frame, List<IReadOnlyList<Complex>> corners)
    {
        var branches = frame.Branches.ToArray();
        for (var i = 0; i < corners.Count; i++)
            branches[branches.Length - corners.Count + i] = branches[branches.Length - corners.Count + i] with
            {
                Ohms = corners[i].MaxBy(c => double.IsFinite(c.Real) ? c.Magnitude : 0),
            };
        return NodalAnalysis.Solve(frame with { Branches = branches }) is not { } solution
            || branches.TakeLast(corners.Count).Any(b => solution.Between(b.A, b.B)!.Value.Magnitude > Least);
    }

    /// <summary>Equal for circuits that are equal in everything that is solved.</summary>
    private static string KeyOf(Circuitry frame, List<IReadOnlyList<Complex>> corners, int from, int to)
    {
        var key = new StringBuilder();
        key.Append(CultureInfo.InvariantCulture, $"{from} {to} {frame.Earth}");
        foreach (var b in frame.Branches)
            key.Append(CultureInfo.InvariantCulture, $"|{b.Name} {b.A} {b.B} {b.Emf.Real} {b.Emf.Imaginary}");
        foreach (var t in frame.Transformations)
            key.Append(CultureInfo.InvariantCulture, $"|{t.Name} {t.A} {t.B} {t.C} {t.D}");
        foreach (var v in frame.Valves)
            key.Append(CultureInfo.InvariantCulture, $"|{v.Name} {v.A} {v.K}");
        // An element's band hangs on its name, and on which of its burdens counts.
        foreach (var c in corners)
            key.Append(CultureInfo.InvariantCulture, $"|{c.Count} {c[^1].Real}");
        return key.ToString();
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
