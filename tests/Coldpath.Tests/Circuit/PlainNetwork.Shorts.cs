using System.Numerics;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Every simple cycle, followed edge by edge.</summary>
internal sealed partial class PlainNetwork
{
    /// <summary>Every simple cycle of components and supply voltages, followed edge by edge.</summary>
    public HashSet<string> Shorted()
    {
        var sources = Lasting.ToArray();
        var edges = new List<Edge>();
        for (var i = 0; i < sources.Length; i++)
        for (var j = i + 1; j < sources.Length; j++)
            if (sources[i].Supply == sources[j].Supply)
                edges.Add(
                    new(
                        sources[i].Supply,
                        component[sources[i].Conductor.Net],
                        component[sources[j].Conductor.Net],
                        Volts(sources[j].Conductor) - Volts(sources[i].Conductor)
                    )
                );
        var shorted = new HashSet<string>();
        for (var first = 0; first < edges.Count; first++)
            if (!shorted.Contains(edges[first].Supply.Name))
                Follow(
                    edges[first].A,
                    edges[first].B,
                    [edges[first]],
                    [edges[first].Volts],
                    [edges[first].A]
                );
        foreach (var diode in Conducting.Where(e => e.Type == ElementType.Diode))
        foreach (var (supply, plus) in Lasting.Where(s => s.Conductor.Polarity == Polarity.Plus))
        foreach (var (same, minus) in Lasting.Where(s => s.Conductor.Polarity == Polarity.Minus))
            if (supply == same && Reaches(plus, diode.A, Grade.Solid) && Reaches(minus, diode.B, Grade.Solid))
                shorted.Add(supply.Name);
        return shorted;

        void Follow(int start, int at, List<Edge> used, List<Complex> steps, List<int> passed)
        {
            if (at == start)
            {
                var sums = used.Zip(steps).GroupBy(s => s.First.Supply.Group, s => s.Second);
                if (sums.Count() > 1 || sums.Any(s => s.Aggregate(Complex.Add).Magnitude > 1e-6))
                    shorted.UnionWith(used.Select(e => e.Supply.Name));
                return;
            }
            if (passed.Contains(at))
                return;
            foreach (var edge in edges.Except(used))
                if (edge.A == at && edge.A != edge.B)
                    Follow(start, edge.B, [.. used, edge], [.. steps, edge.Volts], [.. passed, at]);
                else if (edge.B == at && edge.A != edge.B)
                    Follow(start, edge.A, [.. used, edge], [.. steps, -edge.Volts], [.. passed, at]);
        }
    }

    private sealed class Edge(Supply supply, int a, int b, Complex volts)
    {
        public Supply Supply => supply;
        public int A => a;
        public int B => b;
        public Complex Volts => volts;
    }
}
