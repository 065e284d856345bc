using System.Numerics;
using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// What a meter would read everywhere in one state, each element at the middle of its band. Supplies that are not in step are
/// solved one after another: effective values add by their squares.
/// </summary>
public sealed class Readings
{
    private readonly Network network;
    private readonly Dictionary<int, int> nodeOf = [];
    private readonly List<(NodalSolution Solution, Dictionary<string, Complex> Currents)> solved = [];

    public Readings(Network network, State state)
    {
        this.network = network;
        var conducting = new Conducting(network, state);
        var on = network.Sources.All.Where(s => !s.IsStored && conducting.Holds(s.On)).ToArray();
        foreach (var group in on.Select(s => GroupOf(s.Supply)).Distinct())
            Solve(conducting, on, group);
    }

    /// <summary>Elements of which nothing is known, taken as open.</summary>
    public IReadOnlyList<string> Unknown { get; private set; } = [];

    /// <summary>Why there is no reading; null when there is.</summary>
    public string? Refused { get; private set; }

    /// <summary>Volts from net to net; null when nothing fixes it.</summary>
    public double? Volts(string a, string b) => Between(a, b) is { Length: > 0 } all ? Size(all) : null;

    /// <summary>Volts to earth; null when nothing fixes it.</summary>
    public double? Volts(string net) => Volts(net, network.Netlist.Earth);

    /// <summary>Amperes through an element; 0 when it does not conduct.</summary>
    public double Amperes(string element) => Size(Currents(element));

    /// <summary>
    /// Amperes through the element, from its first end to its second, as far as they are in phase with the current through
    /// the other: negative when they flow against it.
    /// </summary>
    public double Along(string element, string other)
    {
        var (mine, reference) = (Currents(element), Currents(other));
        if (Size(reference) is var size && size == 0)
            return 0;
        return mine.Zip(reference).Sum(p => (p.First * Complex.Conjugate(p.Second)).Real) / size;
    }

    private Complex[] Currents(string element) =>
        [.. solved.Select(s => s.Currents.GetValueOrDefault(element))];

    private Complex[]? Between(string a, string b)
    {
        if (
            !nodeOf.TryGetValue(network.Mesh.Net(a), out var from)
            || !nodeOf.TryGetValue(network.Mesh.Net(b), out var to)
        )
            return null;
        return [.. solved.Select(s => s.Solution.Between(from, to)).OfType<Complex>()];
    }

    private static (bool Direct, string Group) GroupOf(Supply supply) =>
        (supply.Direct, supply.Direct ? "" : supply.Group);

    private static double Size(IEnumerable<Complex> parts) =>
        Math.Sqrt(parts.Sum(p => p.Magnitude * p.Magnitude));

    private void Solve(Conducting conducting, Source[] on, (bool Direct, string Group) group)
    {
        var builder = new CircuitryBuilder(network, net => net);
        foreach (var net in Enumerable.Range(0, network.Mesh.NetCount))
            nodeOf[net] = builder.Node(net);
        foreach (var supply in on.GroupBy(s => s.SupplyIndex))
            builder.Add(supply, GroupOf(supply.First().Supply) == group);
        var unknown = new List<string>();
        var valves = network
            .Mesh.Links.Where(l => l.Type == ElementType.Diode && conducting.Holds(l.Closed))
            .ToArray();
        foreach (var link in network.Mesh.Links.Except(valves))
            if (conducting.Passes(link) || conducting.Holds(link.Closed))
                Add(link);
        foreach (var valve in valves)
            builder.AddValve(valve, CoilVoltages.Drop);
        foreach (var transformer in group.Direct ? [] : Idle(conducting))
            builder.Add(transformer);
        Unknown = [.. unknown.Distinct()];
        var circuit = builder.Build(network.Mesh.Earth);
        Refused ??=
            valves.Length > 0 && !group.Direct ? "a diode on alternating voltage is not solved" : null;
        if (Refused is not null)
            return;
        if (NodalAnalysis.Solve(circuit) is not { } solution)
        {
            Refused = "the circuit contradicts itself";
            return;
        }
        var names = circuit.Branches.Select(b => b.Name).Concat(circuit.Valves.Select(v => v.Name));
        solved.Add((solution, names.Zip(solution.Currents).ToDictionary(p => p.First, p => p.Second)));

        void Add(Link link)
        {
            var corners = Impedances.Of(conducting, link, group.Direct);
            if (!Impedances.Known(corners))
                unknown.Add(link.Element.Id);
            builder.Add(link, Impedances.Middle(corners));
        }
    }

    /// <summary>Transformers that are no source themselves and may be worked backwards.</summary>
    private IEnumerable<Converter> Idle(Conducting conducting) =>
        network
            .Netlist.Converters.Where(c =>
                c is { Type: ConverterType.Transformer, Windings: [{ Count: 2 }, { Count: 2 }] }
            )
            .Where(c =>
                !network
                    .Sources.BySupply[network.Sources.IndexOf(c.Output.Name)]
                    .Any(s => conducting.Holds(s.On))
            );
}
