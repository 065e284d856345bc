using Coldpath.Circuit.Conduction;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>Currents as they flow at the moment in which the current through one element is greatest, from its A to its B.</summary>
internal sealed class Flows
{
    /// <summary>Amperes that are rounding.</summary>
    private const double Least = 1e-7;

    private readonly Network network;
    private readonly Readings readings;
    private readonly string reference;
    private readonly ILookup<string, (string Name, string Other, double Into)> at;
    private readonly ILookup<string, (Source Source, double Into)> sources;

    public Flows(Network network, Readings readings, string reference)
    {
        (this.network, this.readings, this.reference) = (network, readings, reference);
        at = network
            .Netlist.Elements.Select(e => (Element: e, Along: readings.Along(e.Id, reference)))
            .Where(f => Math.Abs(f.Along) > Least)
            .SelectMany(f =>
                new[]
                {
                    (Net: f.Element.A, Flow: (f.Element.Id, f.Element.B, -f.Along)),
                    (Net: f.Element.B, Flow: (f.Element.Id, f.Element.A, f.Along)),
                }
            )
            .ToLookup(f => f.Net, f => f.Flow);
        sources = network.Sources.All.ToLookup(
            s => s.Conductor.Net,
            s => (s, readings.Along(s.Name, reference))
        );
    }

    /// <summary>From a net along the greatest current, against it or with it, to the conductor of a supply.</summary>
    public (IReadOnlyList<CurrentStep> Steps, Source? End) Follow(string net, string without, bool back)
    {
        var steps = new List<CurrentStep>();
        var passed = new HashSet<string> { without };
        var sign = back ? 1 : -1;
        while (true)
        {
            var source = sources[net].DefaultIfEmpty().MaxBy(s => sign * s.Into);
            var next = at[net]
                .Where(f => !passed.Contains(f.Name))
                .DefaultIfEmpty()
                .MaxBy(f => sign * f.Into);
            var (most, own) = (
                next.Name is null ? 0 : sign * next.Into,
                source.Source is null ? 0 : sign * source.Into
            );
            if (own > Least && own >= most)
                return (steps, source.Source);
            if (most <= Least)
                next = Winding(net, passed, sign);
            if (next.Name is null)
                return (steps, null);
            passed.Add(next.Name);
            steps.Add(back ? Step(next.Name, next.Other, net) : Step(next.Name, net, next.Other));
            net = next.Other;
        }
    }

    public CurrentStep Step(string name, string from, string to) =>
        new(name, from, to, readings.Amperes(name), readings.Volts(from, to));

    /// <summary>Across the core of a transformer to the winding's end that current comes to.</summary>
    private (string Name, string Other, double Into) Winding(string net, HashSet<string> passed, int sign) =>
        (
            from t in network.Netlist.Converters
            where t.Type == ConverterType.Transformer && t.Windings.Count == 2 && !passed.Contains(t.Name)
            let own = t.Windings.FirstOrDefault(w => w.Contains(net))
            where own is not null
            from other in t.Windings.Where(w => w != own).SelectMany(w => w)
            where at[other].Any(f => sign * f.Into > Least) || sources[other].Any(s => sign * s.Into > Least)
            select (t.Name, other, 0.0)
        ).FirstOrDefault();
}
