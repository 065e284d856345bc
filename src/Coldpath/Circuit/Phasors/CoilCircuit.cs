using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// All that decides the voltage across a coil in one state: what current can reach from its two sides up to the components
/// that a source holds. When these have no common reference, everything else decides it too.
/// </summary>
internal sealed class CoilCircuit
{
    private readonly Conducting conducting;
    private readonly bool everything;
    private readonly HashSet<int> touched = [];
    private readonly HashSet<int> held = [];
    private readonly HashSet<int> free = [];
    private readonly Queue<int> waiting = new();
    private readonly HashSet<Link> links = [];
    private readonly HashSet<int> supplies = [];
    private readonly HashSet<int> dead = [];
    private readonly HashSet<Converter> windings = [];
    private readonly List<Diagram> conditions = [];

    private CoilCircuit(Conducting conducting, int a, int b, bool everything)
    {
        this.conducting = conducting;
        this.everything = everything;
        Visit(a);
        Visit(b);
        while (waiting.TryDequeue(out var component))
            Spread(component);
    }

    /// <param name="conducting">The state.</param>
    /// <param name="a">The net at one side of the coil.</param>
    /// <param name="b">The net at its other side.</param>
    public static CoilCircuit Around(Conducting conducting, int a, int b)
    {
        var near = new CoilCircuit(conducting, a, b, everything: false);
        return near.HasOneReference ? near : new(conducting, a, b, everything: true);
    }

    public Conducting Conducting => conducting;

    /// <summary>The links between components, in declared order.</summary>
    public IEnumerable<Link> Links => conducting.Network.Mesh.Links.Where(links.Contains);

    /// <summary>Supplies that are on, by number.</summary>
    public IEnumerable<int> Supplies => supplies.Order();

    /// <summary>Supplies that are off, by number: what they are then is not known.</summary>
    public IEnumerable<int> DeadSupplies => dead.Except(supplies).Order();

    /// <summary>Transformers that nothing feeds as they are meant to be fed.</summary>
    public IEnumerable<Converter> Transformers => Netlist.Converters.Where(windings.Contains);

    /// <summary>Why nobody can say what the voltage is; null when it can be worked out.</summary>
    public string? Unknown { get; private set; }

    /// <summary>The condition under which all this is as it is here.</summary>
    public Diagram Condition =>
        conducting.Network.States.Table.AllOf([
            !conducting.Network.AnyShort(),
            .. free.Order().SelectMany(conducting.Standing),
            .. held.Order().SelectMany(Holding),
            .. supplies
                .Concat(dead)
                .Distinct()
                .Order()
                .SelectMany(Sources)
                .Select(s => conducting.AsHere(s.On)),
            .. Links
                .SelectMany(l => l.Element.Burdens)
                .Select(b => conducting.AsHere(conducting.Network.States.Guard(b.When))),
            .. conditions,
        ]);

    private Netlist Netlist => conducting.Network.Netlist;

    private bool HasOneReference
    {
        get
        {
            var parts = new Partition(conducting.Network.Mesh.NetCount, 0);
            foreach (var supply in supplies)
            foreach (var source in On(supply))
                parts.Join(conducting.Component(source.Net), conducting.Component(On(supply).First().Net));
            return held.Select(parts.Reference).Distinct().Count() <= 1;
        }
    }

    private IReadOnlyList<Source> Sources(int supply) => conducting.Network.Sources.BySupply[supply];

    private IEnumerable<Source> On(int supply) => Sources(supply).Where(s => conducting.Holds(s.On));

    private void Visit(int net)
    {
        touched.Add(net);
        var component = conducting.Component(net);
        var on = conducting.SourcesAt(component).Where(s => !s.IsStored && conducting.Holds(s.On)).ToArray();
        foreach (var source in on)
            supplies.Add(source.SupplyIndex);
        if (on.Any(s => Sources(s.SupplyIndex).Count == 1))
            Unknown ??= "what an untraced wire brings is not known";
        if (on.Length > 0)
            held.Add(component);
        if ((on.Length == 0 || everything) && free.Add(component))
            waiting.Enqueue(component);
    }

    private void Spread(int component)
    {
        foreach (var link in conducting.At(component).Where(conducting.Passes))
        {
            if (Turns(link))
                Unknown ??= $"{link.Element.Device} feeds back while it turns";
            links.Add(link);
            Visit(link.A);
            Visit(link.B);
        }
        foreach (var source in conducting.SourcesAt(component).Where(s => !conducting.Holds(s.On)))
            AddDead(source.SupplyIndex);
        foreach (var stored in conducting.SourcesAt(component).Where(s => s.IsStored))
            conditions.Add(conducting.AsHere(stored.On));
        if (conducting.SourcesAt(component).Any(s => s.IsStored && conducting.Holds(s.On)))
            Unknown ??= "a store feeds it while it empties";
        foreach (var converter in Netlist.Converters)
            Cross(converter, component);
        foreach (var coupling in Netlist.Couplings)
            Cross(coupling, component);
    }

    private void AddDead(int supply)
    {
        if (!dead.Add(supply) || Sources(supply)[0].IsStored)
            return;
        foreach (var source in Sources(supply))
            Visit(source.Net);
    }

    /// <summary>A transformer works backwards; what any other converter does then is not known.</summary>
    private void Cross(Converter converter, int component)
    {
        var nets = converter.Windings.SelectMany(w => w).ToArray();
        if (!nets.Any(n => IsAt(n, component)) || windings.Contains(converter))
            return;
        if (
            Sources(conducting.Network.Sources.IndexOf(converter.Output.Name))
                .Any(s => conducting.Holds(s.On))
        )
            return;
        if (converter is { Type: ConverterType.Transformer, Windings: [{ Count: 2 }, { Count: 2 }] })
            windings.Add(converter);
        else
            Unknown ??= $"what {converter.Name} does backwards is not known";
        foreach (var net in nets)
            Visit(conducting.Network.Mesh.Net(net));
    }

    private void Cross(Coupling coupling, int component)
    {
        var driven = coupling.FirstDrives ? coupling.Windings.Skip(1) : coupling.Windings;
        if (!driven.SelectMany(w => w).Any(n => IsAt(n, component)))
            return;
        var driving = coupling.FirstDrives ? coupling.Windings.Take(1) : coupling.Windings;
        var live = conducting.Network.States.Table.AnyOf(
            driving.SelectMany(w => w).Select(conducting.Network.Live)
        );
        conditions.Add(conducting.AsHere(live));
        if (conducting.Holds(live))
            Unknown ??= $"what {coupling.Name} passes on is not known";
    }

    private bool IsAt(string net, int component) =>
        conducting.Component(conducting.Network.Mesh.Net(net)) == component;

    /// <summary>A winding of a machine, which feeds back while it turns.</summary>
    private bool Turns(Link link) =>
        link is { Type: ElementType.Load, Element.Burdens.Count: 0 }
        && Netlist.Loads.Any(l =>
            l.Elements.Contains(link.Element.Id)
            && l.Modes.Any(m => m.Feed.Count == 3 || m.Speed is not null || m.Turns != Turning.Any)
        );

    /// <summary>What holds the component: the way from where current comes in to each of its sources.</summary>
    private IEnumerable<Diagram> Holding(int component)
    {
        if (free.Contains(component))
            return [];
        var nets = touched.Where(n => conducting.Component(n) == component).Order();
        var sources = conducting.SourcesAt(component).Where(s => conducting.Holds(s.On)).ToArray();
        return from net in nets
            from source in sources
            from condition in conducting.Joining(net, source.Net)
            select condition;
    }
}
