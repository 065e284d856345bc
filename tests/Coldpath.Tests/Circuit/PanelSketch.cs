using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>A netlist in the making: names what it adds, and spends a budget of assignments.</summary>
internal sealed class PanelSketch(System.Random dice, int mostAssignments)
{
    public const string Earth = "PE";

    private readonly Dictionary<string, int> counts = [];

    public System.Random Dice => dice;

    public List<string> Nets { get; } = [Earth];
    public List<Supply> Supplies { get; } = [];
    public List<Converter> Converters { get; } = [];
    public List<Coupling> Couplings { get; } = [];
    public List<Variable> Variables { get; } = [];
    public List<Operation> Powered { get; } = [];
    public List<Element> Elements { get; } = [];
    public List<NetlistDevice> Devices { get; } = [];
    public List<Load> Loads { get; } = [];
    public List<Constraint> Constraints { get; } = [];

    /// <summary>The product of the numbers of values so far.</summary>
    public int Assignments { get; private set; } = 1;

    public bool Chance(double probability) => dice.NextDouble() < probability;

    public T Pick<T>(params IReadOnlyList<T> choices) => choices[dice.Next(choices.Count)];

    public bool Affords(int values) => (long)Assignments * values <= mostAssignments;

    public string Name(string prefix)
    {
        counts[prefix] = counts.GetValueOrDefault(prefix) + 1;
        return $"{prefix}{counts[prefix]}";
    }

    public string Net()
    {
        var net = Name("n");
        Nets.Add(net);
        return net;
    }

    public string[] NewNets(int count) => [.. Enumerable.Range(0, count).Select(_ => Net())];

    public string Add(Variable variable)
    {
        Assignments *= variable.Values.Count;
        Variables.Add(variable);
        return variable.Name;
    }

    public Element Add(
        string device,
        ElementType type,
        string a,
        string b,
        Expression? closed = null,
        bool power = false,
        int pole = 0
    )
    {
        var element = new Element
        {
            Id = $"{device}.{Elements.Count + 1}",
            Device = device,
            Type = type,
            A = a,
            B = b,
            Closed = closed ?? Expression.True,
            Power = power,
            Pole = pole,
        };
        Elements.Add(element);
        return element;
    }

    /// <summary>One element a phase from the nets to new ones, which are returned.</summary>
    public string[] Poles(
        string device,
        ElementType type,
        IReadOnlyList<string> from,
        Expression closed,
        List<string>? ids = null
    )
    {
        var to = NewNets(from.Count);
        Poles(device, type, from, to, closed, ids);
        return to;
    }

    public void Poles(
        string device,
        ElementType type,
        IReadOnlyList<string> from,
        IReadOnlyList<string> to,
        Expression closed,
        List<string>? ids = null
    )
    {
        for (var pole = 0; pole < from.Count; pole++)
        {
            var element = Add(device, type, from[pole], to[pole], closed, power: true, pole: pole + 1);
            ids?.Add(element.Id);
        }
    }

    /// <summary>A two-valued variable that the mover may set, and perhaps set back.</summary>
    public static Variable TwoValued(
        string name,
        VariableKind kind,
        string rest,
        string other,
        Mover by,
        Mover? back,
        FailureClass? failure = null,
        Expression? when = null
    )
    {
        var moves = new List<Move> { new(rest, other, by, when ?? Expression.True, Expression.False) };
        if (back is { } mover)
            moves.Add(new(other, rest, mover, Expression.True, Expression.False));
        return new()
        {
            Name = name,
            Device = name.Split('.')[0],
            Kind = kind,
            Class = failure,
            Values = [rest, other],
            Rest = rest,
            Moves = moves,
        };
    }

    public static VariableIs Is(string variable, string value) => new(variable, value);

    public Netlist Netlist(string name) =>
        new()
        {
            Panel = name,
            Earth = Earth,
            Nets = [.. Nets],
            Supplies = [.. Supplies],
            Converters = [.. Converters],
            Couplings = [.. Couplings],
            Variables = [.. Variables],
            Powered = [.. Powered],
            Elements = [.. Elements],
            Devices = [.. Devices],
            Loads = [.. Loads],
            Constraints = [.. Constraints],
            Points =
            [
                .. Elements
                    .Where(e => e.Type == ElementType.Load)
                    .Select(e => new Point($"{e.Id}:1", e.A, e.Device, null)),
            ],
        };
}
