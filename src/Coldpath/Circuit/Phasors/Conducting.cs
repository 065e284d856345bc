using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>
/// What conducts in one state: the solid components, the links that reach between them, the sources that are on. What is
/// used of it can be remembered as a condition, which other states then share.
/// </summary>
internal sealed class Conducting
{
    private readonly Network network;
    private readonly bool[] assignment;
    private readonly Partition solid;
    private readonly ILookup<int, Link> incident;
    private readonly ILookup<int, Link> tree;
    private readonly ILookup<int, Source> sources;

    public Conducting(Network network, State state)
    {
        this.network = network;
        assignment = network.States.Assignment(state);
        solid = new(network.Mesh.NetCount, network.Mesh.Earth);
        var joints = network.Mesh.Links.Where(IsJoint).ToArray();
        tree = joints.SelectMany(l => new[] { (l.A, l), (l.B, l) }).ToLookup(p => p.Item1, p => p.l);
        incident = network
            .Mesh.Links.Where(l => l.A != l.B)
            .SelectMany(l => new[] { Component(l.A), Component(l.B) }.Distinct().Select(c => (c, l)))
            .ToLookup(p => p.c, p => p.l);
        sources = network.Sources.All.ToLookup(s => Component(s.Net));
    }

    public Network Network => network;

    /// <summary>The net that stands for the solid component.</summary>
    public int Component(int net) => solid.Reference(net);

    /// <summary>Every link with an end in the component.</summary>
    public IEnumerable<Link> At(int component) => incident[component];

    /// <summary>Every source connected to the component, on or not.</summary>
    public IEnumerable<Source> SourcesAt(int component) => sources[component];

    public bool Holds(Diagram condition) => network.States.Table.Evaluate(condition, assignment);

    public bool Holds(Expression guard) => Holds(network.States.Guard(guard));

    /// <summary>It lets current through from one component to another.</summary>
    public bool Passes(Link link) => !link.IsSolid && Holds(link.Closed) || Holds(link.Leaks);

    /// <summary>The condition as it stands here.</summary>
    public Diagram AsHere(Diagram condition) => Holds(condition) ? condition : !condition;

    /// <summary>
    /// The links around a component as they stand here. Solid ones between nets that are joined besides matter only
    /// where they do the joining.
    /// </summary>
    public IEnumerable<Diagram> Standing(int component) =>
        incident[component]
            .Where(l => !l.IsSolid || Component(l.A) != Component(l.B) || IsTree(l))
            .SelectMany(l => new[] { l.Closed, l.Leaks })
            .Select(AsHere);

    /// <summary>What joins two nets of one component, as it stands here.</summary>
    public IEnumerable<Diagram> Joining(int from, int to) => Path(from, to).Select(l => AsHere(l.Closed));

    /// <summary>The closed links from one net to another of its component.</summary>
    public IReadOnlyList<Link> Path(int from, int to)
    {
        var cameBy = new Dictionary<int, Link?> { [from] = null };
        var queue = new Queue<int>([from]);
        while (queue.TryDequeue(out var net) && net != to)
            foreach (var link in tree[net])
                if (cameBy.TryAdd(Other(link, net), link))
                    queue.Enqueue(Other(link, net));
        var path = new List<Link>();
        for (var net = to; cameBy.GetValueOrDefault(net) is { } link; net = Other(link, net))
            path.Insert(0, link);
        return path;
    }

    public static int Other(Link link, int net) => link.A == net ? link.B : link.A;

    private bool IsJoint(Link link) => link.IsSolid && Holds(link.Closed) && solid.Join(link.A, link.B);

    private bool IsTree(Link link) => tree[link.A].Contains(link);
}
