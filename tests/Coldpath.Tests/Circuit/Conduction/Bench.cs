using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Conduction;

/// <summary>
/// A circuit worked by hand. Nets come into being when they are named; a link with a switch conducts when the switch
/// is among those said to be on.
/// </summary>
internal sealed class Bench
{
    public const string Earth = "PE";

    private readonly SortedSet<string> nets = new(StringComparer.Ordinal) { Earth };
    private readonly List<string> switches = [];
    private readonly List<Element> elements = [];
    private readonly List<Supply> supplies = [];
    private readonly List<Converter> converters = [];
    private readonly List<Coupling> couplings = [];
    private readonly List<Load> loads = [];
    private Network? network;

    public Network Network => network ??= new Network(Netlist(), new StateSpace(Netlist()));

    /// <summary>Three phases of 230 V to the star point, on nets of these names; a fourth is the neutral.</summary>
    public Bench Star(
        string name,
        string nets,
        string group = "A",
        double volts = 230,
        Expression? present = null
    )
    {
        double[] degrees = [0, -120, 120];
        string[] names = ["L1", "L2", "L3", "N"];
        var conductors = nets.Split(' ')
            .Select(
                (net, i) => (names[i], net, i < 3 ? volts : 0, i < 3 ? degrees[i] : 0, Polarity.Alternating)
            );
        return Supply(name, group, present, [.. conductors]);
    }

    /// <summary>Two wires, the second at 0 V.</summary>
    public Bench TwoWire(
        string name,
        string nets,
        double volts = 230,
        string? group = null,
        bool elv = false,
        Expression? present = null
    )
    {
        var ends = nets.Split(' ');
        Supply(
            name,
            group ?? name,
            present,
            ("L", ends[0], volts, 0, Polarity.Alternating),
            ("N", ends[1], 0, 0, Polarity.Alternating)
        );
        supplies[^1] = supplies[^1] with { ExtraLow = elv };
        return this;
    }

    public Bench Direct(
        string name,
        string nets,
        double volts = 24,
        Store? store = null,
        Expression? present = null
    )
    {
        var ends = nets.Split(' ');
        Supply(
            name,
            name,
            present,
            ("+", ends[0], volts, 0, Polarity.Plus),
            ("-", ends[1], 0, 0, Polarity.Minus)
        );
        supplies[^1] = supplies[^1] with { Direct = true, Store = store };
        return this;
    }

    public Bench Link(string id, ElementType type, string a, string b, string? by = null) =>
        Link(id, type, a, b, by is null ? Expression.True : On(by));

    public Bench Link(
        string id,
        ElementType type,
        string a,
        string b,
        Expression closed,
        Expression? leaks = null
    )
    {
        elements.Add(
            new()
            {
                Id = id,
                Device = id,
                Type = type,
                A = Net(a),
                B = Net(b),
                Closed = closed,
                Leaks = leaks,
            }
        );
        return this;
    }

    public Bench Wire(string a, string b, string? by = null) =>
        Link($"{a}-{b}", ElementType.Conductor, a, b, by);

    public Bench Contact(string a, string b, string? by = null) =>
        Link($"{a}-{b}", ElementType.Contact, a, b, by);

    public Bench Coil(string a, string b, string? by = null) => Link($"{a}-{b}", ElementType.Load, a, b, by);

    public Bench Series(string a, string b, string? by = null) =>
        Link($"{a}-{b}", ElementType.Series, a, b, by);

    public Bench Fault(string a, string b, string? by = null) =>
        Link($"{a}-{b}", ElementType.Fault, a, b, by);

    public Bench Diode(string anode, string cathode) =>
        Link($"{anode}-{cathode}", ElementType.Diode, anode, cathode);

    public Bench Couple(string name, bool firstDrives, params string[] windings)
    {
        couplings.Add(new(name, [.. windings.Select(w => w.Split(' ').Select(Net).ToArray())], firstDrives));
        return this;
    }

    /// <summary>A transformer of two wires a side; its primary winding is a load.</summary>
    public Bench Transformer(
        string name,
        string primary,
        string secondary,
        Expression when,
        double volts = 110
    )
    {
        string[] inputs = [.. primary.Split(' ').Select(Net)];
        Coil(inputs[0], inputs[1]);
        string[] ends = [.. secondary.Split(' ').Select(Net)];
        converters.Add(
            new()
            {
                Name = name,
                Inputs = inputs,
                Windings = [inputs, ends],
                When = when,
                Output = new()
                {
                    Name = $"{name}.out",
                    Group = name,
                    Conductors =
                    [
                        new("X1", ends[0], volts, 0, Polarity.Alternating, Expression.True),
                        new("X2", ends[1], 0, 0, Polarity.Alternating, Expression.True),
                    ],
                },
            }
        );
        return this;
    }

    public Bench Load(string name, string elements, params LoadMode[] modes)
    {
        loads.Add(
            new()
            {
                Name = name,
                Elements = elements.Split(' '),
                Modes = modes,
            }
        );
        return this;
    }

    public static LoadMode Mode(
        string feed,
        string joined = "",
        string apart = "",
        Turning turns = Turning.Forward
    ) => new("mode", null, feed.Split(' '), Pairs(joined), Pairs(apart), turns);

    /// <summary>The variable's on condition; the switch comes into being.</summary>
    public VariableIs On(string name)
    {
        if (!switches.Contains(name))
            switches.Add(name);
        return new(name, "yes");
    }

    /// <summary>Whether the condition holds with just these switches on.</summary>
    public bool Holds(Func<Network, Diagram> condition, params string[] on) => Holds(condition(Network), on);

    public bool Holds(Expression condition, params string[] on) => Holds(Network.Of(condition), on);

    public bool Live(string net, params string[] on) => Holds(n => n.Live(net), on);

    public bool EarthTied(string net, params string[] on) => Holds(n => n.EarthTied(net), on);

    public bool Short(params string[] on) => Holds(n => n.AnyShort(), on);

    public bool Carries(string element, params string[] on) => Holds(n => n.Carries(element), on);

    public Diagram Condition(string switchName) => Network.States.Is(switchName, "yes");

    /// <summary>The paths with just these switches on.</summary>
    public Trace Trace(params string[] on) => new(Network, StateWith(on));

    private bool Holds(Diagram condition, string[] on) => Network.States.Holds(condition, StateWith(on));

    private State StateWith(string[] on)
    {
        if (on.Except(switches).FirstOrDefault() is { } unknown)
            throw new ArgumentException($"no switch {unknown}", nameof(on));
        return new(switches.Select(s => on.Contains(s) ? 1 : 0));
    }

    private Bench Supply(
        string name,
        string group,
        Expression? present,
        params (string Name, string Net, double Volts, double Degrees, Polarity Polarity)[] conductors
    )
    {
        supplies.Add(
            new()
            {
                Name = name,
                Group = group,
                Present = present ?? Expression.True,
                Conductors =
                [
                    .. conductors.Select(c => new SupplyConductor(
                        c.Name,
                        Net(c.Net),
                        c.Volts,
                        c.Degrees,
                        c.Polarity,
                        Expression.True
                    )),
                ],
            }
        );
        return this;
    }

    private static NetPair[] Pairs(string text) =>
        [
            .. text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(p => new NetPair(p.Split('=')[0], p.Split('=')[1])),
        ];

    private string Net(string name)
    {
        nets.Add(name);
        return name;
    }

    public Netlist Netlist() =>
        new()
        {
            Panel = "bench",
            Earth = Earth,
            Nets = [.. nets],
            Supplies = supplies,
            Converters = converters,
            Couplings = couplings,
            Elements = elements,
            Loads = loads,
            Variables =
            [
                .. switches.Select(s => new Variable
                {
                    Name = s,
                    Device = s,
                    Kind = VariableKind.Position,
                    Values = ["no", "yes"],
                    Rest = "no",
                }),
            ],
        };
}
