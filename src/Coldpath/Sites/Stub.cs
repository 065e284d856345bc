using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>
/// Stands in a netlist for what lies behind a bundle of nets: links that may be there or not, and sources that may come
/// and go, each free to do so at any time.
/// </summary>
internal sealed class Stub
{
    private const string Open = "open";
    private const string Closed = "closed";

    private readonly string label;
    private readonly Func<string, string> netOf;
    private readonly List<Element> elements = [];
    private readonly List<Supply> supplies = [];
    private readonly List<Variable> variables = [];
    private readonly List<string> nets = [];
    private readonly string earth;

    /// <param name="label">What the other side is called: the tag of its things.</param>
    /// <param name="earth">The netlist's earth.</param>
    /// <param name="netOf">The netlist's net at a joint.</param>
    public Stub(string label, string earth, Func<string, string> netOf) =>
        (this.label, this.earth, this.netOf) = (label, earth, netOf);

    /// <summary>A free link between nets of joints: a load that takes current or not, or a contact.</summary>
    public void Link(IReadOnlyList<string> joints, Grade grade)
    {
        var isLoad = grade == Grade.Loose;
        var own = isLoad ? $"takes{Number(variables.Count)}" : $"{joints[0]}-{joints[1]}";
        var variable = Free($"{label}.{own}", label, isLoad ? "nothing" : Open, isLoad ? "current" : Closed);
        var closed = new VariableIs(variable.Name, variable.Values[1]);
        foreach (var joint in joints.Skip(1))
            Add($"{label}.{joints[0]}-{joint}", label, netOf(joints[0]), netOf(joint), TypeOf(grade), closed);
    }

    /// <summary>A source that may feed nets of joints.</summary>
    /// <param name="source">As its own part describes it.</param>
    /// <param name="group">Sources of one group share their angle reference.</param>
    /// <param name="feeds">Where its conductors arrive, and how.</param>
    public void Feed(Source source, string group, IReadOnlyList<Feed> feeds)
    {
        var presence = Free(source.Name, source.Name, "present", "absent");
        var present = new VariableIs(presence.Name, "present");
        supplies.Add(
            source.Supply with
            {
                Name = source.Name,
                Group = group,
                Present = present,
                Store = source.Supply.Store is { } store ? store with { Variable = presence.Name } : null,
                Conductors = [.. source.Supply.Conductors.Select(c => Conductor(source, c))],
            }
        );
        foreach (var arriving in feeds.GroupBy(f => f.Conductor.Name))
            Arrive(source, [.. arriving]);
    }

    /// <summary>The netlist with all of this in it.</summary>
    public Netlist AddTo(Netlist netlist) =>
        netlist with
        {
            Nets = [.. netlist.Nets, .. nets],
            Elements = [.. netlist.Elements, .. elements],
            Supplies = [.. netlist.Supplies, .. supplies],
            Variables = [.. netlist.Variables, .. variables],
            Devices = [.. netlist.Devices, .. Devices()],
        };

    private IEnumerable<NetlistDevice> Devices() =>
        variables
            .Select(v => v.Device)
            .Distinct()
            .Select(tag => new NetlistDevice { Tag = tag, Kind = "other panel" });

    private SupplyConductor Conductor(Source source, SupplyConductor conductor)
    {
        var net = NetOf(source, conductor);
        nets.Add(net);
        if (source.Earthed.Contains(conductor.Name))
            Add($"{net} bond", source.Name, net, earth, ElementType.Conductor, Expression.True);
        return conductor with { Net = net, Present = Expression.True };
    }

    private static string NetOf(Source source, SupplyConductor conductor) => $"{source.Name} {conductor.Name}";

    /// <summary>Where a conductor may arrive at several nets, each arrival is a contact of its own.</summary>
    private void Arrive(Source source, IReadOnlyList<Feed> feeds)
    {
        foreach (var feed in feeds)
        {
            var from = NetOf(source, feed.Conductor);
            var closed = Expression.True;
            if (feeds.Count > 1)
            {
                var variable = Free($"{from} at {feed.Joint}", source.Name, Open, Closed);
                closed = new VariableIs(variable.Name, Closed);
            }
            Add($"{from}-{feed.Joint}", source.Name, from, netOf(feed.Joint), TypeOf(feed.Grade), closed);
        }
    }

    private void Add(string id, string device, string a, string b, ElementType type, Expression closed) =>
        elements.Add(
            new Element
            {
                Id = id,
                Device = device,
                A = a,
                B = b,
                Type = type,
                Closed = closed,
            }
        );

    /// <summary>Changes by itself at any time, which is the most that the other side can do.</summary>
    private Variable Free(string name, string device, string rest, string other)
    {
        var variable = new Variable
        {
            Name = name,
            Device = device,
            Kind = VariableKind.Process,
            Values = [rest, other],
            Rest = rest,
            Moves =
            [
                new(rest, other, Mover.Process, Expression.True, Expression.False),
                new(other, rest, Mover.Process, Expression.True, Expression.False),
            ],
        };
        variables.Add(variable);
        return variable;
    }

    private static ElementType TypeOf(Grade grade) =>
        grade switch
        {
            Grade.Solid => ElementType.Contact,
            Grade.Load => ElementType.Series,
            _ => ElementType.Load,
        };

    private static string Number(int count) =>
        count == 0 ? "" : $" {(count + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
}
