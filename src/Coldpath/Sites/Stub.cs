using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Sites;

/// <summary>
/// Stands in a netlist for what lies behind a bundle of nets: links that may be there or not, and sources that may come
/// and go, each free to do so at any time.
/// </summary>
internal sealed class Stub
{
    private const string Open = "open";
    private const string Closed = "closed";
    private const string NotThere = "not there";
    private const string There = "there";

    private readonly Func<string, string> netOf;
    private readonly StubGuards guards;
    private readonly List<Element> elements = [];
    private readonly List<Supply> supplies = [];
    private readonly List<Variable> variables = [];
    private readonly List<Load> loads = [];
    private readonly List<string> nets = [];
    private readonly string earth;

    /// <param name="earth">The netlist's earth.</param>
    /// <param name="netOf">The netlist's net at a joint.</param>
    public Stub(string earth, Func<string, string> netOf)
    {
        (this.earth, this.netOf) = (earth, netOf);
        guards = new StubGuards(variables);
    }

    /// <summary>
    /// A load that may take current from nets of joints. It always stands there: with a load that comes and goes nothing
    /// more can be live, since what loads bring about is optional wherever it moves anything.
    /// </summary>
    /// <param name="label">What the other side is called: the tag of its things.</param>
    /// <param name="joints">Two or more.</param>
    /// <param name="power">It is fed through main poles.</param>
    public void Load(string label, IReadOnlyList<string> joints, bool power)
    {
        var first = netOf(joints[0]);
        var before = elements.Count;
        foreach (var net in joints.Skip(1).Select(netOf))
            Add($"{label}.load {first}-{net}", label, first, net, Grade.Loose, Expression.True, power);
        if (power)
            loads.Add(
                new Load
                {
                    Name = $"{label}.load at {first}",
                    Elements = [.. elements.Skip(before).Select(e => e.Id)],
                    Terminals = [.. joints.Select(netOf)],
                }
            );
    }

    /// <summary>Contacts that link nets of joints or not, as they please; those between the same devices are poles of one.</summary>
    /// <param name="label">What the other side is called: the tag of its things.</param>
    /// <param name="groups">The joints that a pole links, two or more.</param>
    /// <param name="grade">How well they conduct.</param>
    public void Contacts(string label, IEnumerable<IReadOnlyList<string>> groups, Grade grade)
    {
        foreach (
            var poles in groups.GroupBy(g => string.Join(' ', g.Select(j => DeviceOf(netOf(j))).Distinct()))
        )
        {
            var (first, second) = (netOf(poles.First()[0]), netOf(poles.First()[1]));
            var variable = Free($"{label}.{first}-{second}", label, Open, Closed);
            foreach (var pole in poles)
            foreach (var net in pole.Skip(1).Select(netOf))
            {
                var closed = new VariableIs(variable.Name, Closed);
                Add($"{label}.{netOf(pole[0])}-{net}", label, netOf(pole[0]), net, grade, closed);
            }
        }
    }

    private static string DeviceOf(string net) => net.Split(':')[0];

    /// <summary>A source that may feed nets of joints.</summary>
    /// <param name="source">As its own part describes it.</param>
    /// <param name="group">Sources of one group share their angle reference.</param>
    /// <param name="feeds">Where its conductors arrive, and how.</param>
    /// <param name="weldedIn">Only once a contact has welded there, or beyond; null for always.</param>
    public void Feed(Source source, string group, IReadOnlyList<Feed> feeds, string? weldedIn = null)
    {
        if (!supplies.Exists(s => s.Name == source.Name))
            AddSupply(source, group);
        var given = LetIn(source.Name, source.Name, weldedIn);
        foreach (var arriving in feeds.Where(f => !f.IsLoose).GroupBy(f => f.Conductor.Name))
            Arrive(source, [.. arriving], given, weldedIn);
        foreach (var feed in feeds.Where(f => f.IsLoose))
            Arrive(
                source,
                feed,
                ThroughLoads(source.Name, netOf(feed.Joint), given),
                ByWeld(weldedIn is not null)
            );
    }

    private void AddSupply(Source source, string group)
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
    }

    /// <summary>A source of the netlist itself that may come back from outside.</summary>
    /// <param name="feeds">Where its conductors arrive, and how.</param>
    /// <param name="netOfOwn">The netlist's net of a conductor, by the net it has where it is at home.</param>
    /// <param name="weldedIn">Only once a contact has welded there, or beyond; null for always.</param>
    public void Return(IEnumerable<Feed> feeds, Func<string, string> netOfOwn, string? weldedIn = null)
    {
        foreach (var feed in feeds)
        {
            var (from, to) = (netOfOwn(feed.Conductor.Net), netOf(feed.Joint));
            if (from == to)
                continue;
            var label = $"{feed.Source.Name} outside";
            var given = LetIn(feed.Source.Name, label, weldedIn);
            var closed = feed.IsLoose
                ? ThroughLoads(label, to, given)
                : FreeContact($"{label}.{from}-{to}", label, given);
            var id = $"{label}.{from}-{to}{How(feed, weldedIn)}";
            Add(id, label, from, to, feed.Grade, closed);
        }
    }

    /// <summary>A contact in another panel has welded: with that the source comes where it never does otherwise.</summary>
    private Expression LetIn(string source, string device, string? weldedIn)
    {
        if (weldedIn is null)
            return Expression.True;
        var name = $"{source} through {weldedIn}.let-in";
        if (!variables.Exists(v => v.Name == name))
            variables.Add(FailureVariable.Of(name, device, FailureClass.Contact, Expression.True));
        return new VariableIs(name, FailureVariable.Yes);
    }

    /// <summary>All of it in one text: stubs of one text are the same.</summary>
    public string Signature =>
        string.Join(
            '\n',
            [
                .. elements
                    .Concat(guards.Elements)
                    .Select(e =>
                        $"{e.Id} {e.Device} {e.A} {e.B} {e.Type} {e.Power} {string.Join(' ', Guards.Variables(e.Closed))}"
                    ),
                .. variables.Select(v => $"{v.Name} {v.Rest}"),
                .. supplies.SelectMany(u =>
                    u.Conductors.Select(c =>
                        $"{u.Name} {u.Group} {u.Direct} {u.ExtraLow} {u.Limited} {u.Ohms} {u.Store} {c.Name} {c.Net} "
                        + $"{c.Volts:R} {c.Degrees:R} {c.Polarity}"
                    )
                ),
            ]
        );

    /// <summary>The netlist with all of this in it.</summary>
    public Netlist AddTo(Netlist netlist) =>
        netlist with
        {
            Nets = [.. netlist.Nets, .. nets, .. guards.Nets],
            Elements = [.. netlist.Elements, .. elements, .. guards.Elements],
            Supplies = [.. netlist.Supplies, .. supplies],
            Variables = [.. netlist.Variables, .. variables],
            Loads = [.. netlist.Loads, .. loads],
            Devices = [.. netlist.Devices, .. Devices(), .. guards.Devices],
            Powered = [.. guards.Powered, .. netlist.Powered],
        };

    private IEnumerable<NetlistDevice> Devices() =>
        elements
            .Select(e => e.Device)
            .Concat(variables.Select(v => v.Device))
            .Distinct()
            .Where(tag => !guards.Has(tag))
            .Select(tag => new NetlistDevice
            {
                Tag = tag,
                Kind = "other panel",
                Elsewhere = true,
            });

    private SupplyConductor Conductor(Source source, SupplyConductor conductor)
    {
        var net = NetOf(source, conductor);
        nets.Add(net);
        if (source.Earthed.Contains(conductor.Name))
            elements.Add(
                new Element
                {
                    Id = $"{net} bond",
                    Device = source.Name,
                    A = net,
                    B = earth,
                    Type = ElementType.Conductor,
                }
            );
        return conductor with { Net = net, Present = Expression.True };
    }

    private static string NetOf(Source source, SupplyConductor conductor) =>
        $"{source.Name} {conductor.Name}";

    /// <summary>What comes through loads to the terminals of one device comes to all of them or to none.</summary>
    private Expression ThroughLoads(string label, string net, Expression given)
    {
        var name = $"{label}.through loads at {DeviceOf(net)}{ByWeld(given is not Constant)}";
        return variables.Exists(v => v.Name == name)
            ? Expression.AllOf(given, new VariableIs(name, There))
            : FreeContact(name, label, given);
    }

    private static string ByWeld(bool welded) => welded ? " by a weld" : "";

    private static string How(Feed feed, string? weldedIn) =>
        $"{(feed.IsLoose ? " through loads" : "")}{ByWeld(weldedIn is not null)}";

    private Expression FreeContact(string name, string device, Expression given) =>
        Expression.AllOf(given, new VariableIs(Free(name, device, NotThere, There, given).Name, There));

    /// <summary>
    /// Where a conductor may arrive at several nets, each arrival is a contact of its own. What isolates it and what
    /// clears a short on its way stands in between.
    /// </summary>
    private void Arrive(Source source, IReadOnlyList<Feed> feeds, Expression given, string? weldedIn)
    {
        foreach (var feed in feeds)
        {
            var behind = feed.Through.Isolator is { } isolator ? $" behind {isolator.Tag}" : "";
            var name = $"{source.Name}.{feed.Conductor.Name} at {netOf(feed.Joint)}{behind}";
            Arrive(source, feed, feeds.Count > 1 ? FreeContact(name, source.Name, given) : given, weldedIn);
        }
    }

    private void Arrive(Source source, Feed feed, Expression closed, string? weldedIn)
    {
        var from = Guarded(source, feed);
        var to = netOf(feed.Joint);
        Add($"{from}-{to}{How(feed, weldedIn)}", source.Name, from, to, feed.Grade, closed);
    }

    private string Guarded(Source source, Feed feed)
    {
        var net = NetOf(source, feed.Conductor);
        if (feed.Through.Clears)
            net = guards.Clearing(source.Name, net);
        if (feed.Through.Isolator is { } isolator)
            net = guards.Isolating(isolator, net);
        return net;
    }

    private void Add(
        string id,
        string device,
        string a,
        string b,
        Grade grade,
        Expression closed,
        bool power = false
    ) =>
        elements.Add(
            new Element
            {
                Id = id,
                Device = device,
                A = a,
                B = b,
                Type = TypeOf(grade),
                Closed = closed,
                Power = power,
            }
        );

    /// <summary>Changes by itself at any time, which is the most that the other side can do.</summary>
    private Variable Free(string name, string device, string rest, string other, Expression? given = null)
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
                new(rest, other, Mover.Process, given ?? Expression.True, Expression.False),
                new(other, rest, Mover.Process, given ?? Expression.True, Expression.False),
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
}
