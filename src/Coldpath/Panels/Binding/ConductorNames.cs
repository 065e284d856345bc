using Coldpath.Devices;

namespace Coldpath.Panels.Binding;

/// <summary>
/// Which conductors arrive at which net: names begin at the conductors of supplies and flow through the poles of
/// devices, from the line side to the load side.
/// </summary>
internal sealed class ConductorNames
{
    public static readonly ConductorNames None = new([], new Joints(), areAll: true);

    private readonly Joints joints;
    private readonly Dictionary<int, SortedSet<string>> names = [];
    private readonly ILookup<int, int> ways;

    public ConductorNames(IEnumerable<(string Tag, Blueprint Blueprint)> devices, Joints joints, bool areAll)
    {
        AreAll = areAll;
        this.joints = joints;
        var known = devices.ToList();
        ways = known
            .SelectMany(d =>
                Poles(d.Blueprint).Select(p => (From: Net(d.Tag, p.Left), To: Net(d.Tag, p.Right)))
            )
            .ToLookup(w => w.From, w => w.To);
        foreach (var (tag, blueprint) in known)
        foreach (var (terminal, name) in Sources(blueprint))
            Spread(Net(tag, terminal), name);
    }

    /// <summary>No more will come to be known.</summary>
    public bool AreAll { get; }

    public IReadOnlyCollection<string> At(Pin pin) =>
        names.TryGetValue(joints.RootOf(pin), out var found) ? found : [];

    private int Net(string tag, string terminal) => joints.RootOf(new Pin(tag, terminal));

    private static IEnumerable<(string Left, string Right)> Poles(Blueprint blueprint) =>
        blueprint.Parts.Where(p => p.Through).SelectMany(p => p.Left.Zip(p.Right));

    /// <summary>Where conductors begin, and what they are called.</summary>
    public static IEnumerable<(string Terminal, string Name)> Sources(Blueprint blueprint) =>
        blueprint
            .Network.Supplies.Concat(blueprint.Network.Converters.Select(c => c.Output))
            .SelectMany(s => s.Conductors)
            .Select(c => (c.Net, c.Name));

    private void Spread(int net, string name)
    {
        var open = new Stack<int>([net]);
        while (open.TryPop(out var at))
        {
            if (!names.TryGetValue(at, out var here))
                names.Add(at, here = new SortedSet<string>(StringComparer.Ordinal));
            if (!here.Add(name))
                continue;
            foreach (var next in ways[at])
                open.Push(next);
        }
    }
}
