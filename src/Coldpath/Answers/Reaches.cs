using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.States;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Answers;

/// <summary>How points are live in one state of a panel.</summary>
public sealed class Reaches(Evidence evidence, Network network, State state)
{
    private readonly Dictionary<string, PointReach> known = [];
    private readonly Trace trace = new(network, state);

    public Reaches(Evidence evidence, State state)
        : this(evidence, evidence.Network, state) { }

    public PointReach Of(Point point) => OfNet(point.Net) with { Point = point.Name, Place = point.Place };

    /// <summary>What a load does: "runs forward", "single-phasing", "stands live", "dead".</summary>
    public string Doing(Load load)
    {
        var words = evidence.Words;
        return Holds(network.Runs(load.Name, Turning.Forward)) ? "runs forward"
            : Holds(network.Runs(load.Name, Turning.Reverse)) ? "runs in reverse"
            : Holds(network.Runs(load.Name)) ? "runs"
            : Holds(network.SinglePhasing(load.Name)) ? "single-phasing"
            : Holds(network.AbnormalAndLive(load.Name)) ? Abnormally(load)
            : Holds(network.StandsLive(load.Name)) ? $"stands {words.Live}"
            : words.Dead;
    }

    /// <summary>Two terminals leave nothing to connect wrongly: what is between, a diode or another load, is the reason.</summary>
    private static string Abnormally(Load load) =>
        load.Modes.All(m => m.Feed.Count == 2)
            ? "carries current, though not straight from a supply"
            : "carries current, but in no connection it is made for";

    private PointReach OfNet(string net)
    {
        if (!known.TryGetValue(net, out var reach))
        {
            reach = Find(net);
            known.Add(net, reach);
        }
        return reach;
    }

    private PointReach Find(string net)
    {
        if (!Holds(network.Live(net)))
            return new() { Point = net, Reach = Reach.Dead };
        return new()
        {
            Point = net,
            Reach = ReachOf(net),
            ExtraLow = Holds(network.ExtraLowOnly(net)),
            From = [.. From(net)],
            Path = trace.Live(net) is { } path ? evidence.Steps(path) : [],
        };
    }

    /// <summary>
    /// The supplies whose conductors come to the net; where none does, those whose voltage comes through loads or
    /// couplings, a transformer's output only if nothing ahead of it is among them.
    /// </summary>
    private IEnumerable<string> From(string net)
    {
        var direct = Supplies.Where(s =>
            Holds(network.LiveFrom(net, s)) && Holds(network.Reached(net, s, Grade.Load))
        );
        if (direct.Any())
            return direct;
        var primary = evidence
            .Netlist.Supplies.Select(s => s.Name)
            .Where(s => Holds(network.LiveFrom(net, s)));
        return primary.Any() ? primary : Supplies.Where(s => Holds(network.LiveFrom(net, s)));
    }

    private Reach ReachOf(string net) =>
        Holds(network.Live(net, LiveBy.Solid)) ? Reach.Solid
        : Holds(network.Live(net, LiveBy.Load)) ? Reach.Load
        : Holds(network.Live(net, LiveBy.Backfeed)) ? Reach.Backfeed
        : Reach.Stored;

    private IEnumerable<string> Supplies =>
        evidence
            .Netlist.Supplies.Select(s => s.Name)
            .Concat(evidence.Netlist.Converters.Select(c => c.Output.Name));

    private bool Holds(Circuit.Diagrams.Diagram condition) => network.States.Holds(condition, state);
}
