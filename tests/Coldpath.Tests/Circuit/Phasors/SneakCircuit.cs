using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Phasors;

/// <summary>
/// A small control circuit with a coil that current may reach by many ways: contacts, lamps and other coils between a few
/// nets, at random, on one supply or two in step, earthed; with direct voltage also diodes, with alternating a
/// transformer that is fed from behind.
/// </summary>
internal sealed record SneakCircuit(Netlist Netlist, double Rated, bool Direct)
{
    public const string A = "n3";
    public const string B = "n4";
    public const string Coil = "K1.A1-A2";

    public static SneakCircuit Of(int seed)
    {
        var random = new Random(seed);
        var direct = random.Next(2) == 0;
        var rated = direct ? 24.0 : 120.0;
        var nets = Enumerable.Range(0, 5 + random.Next(4)).Select(i => $"n{i}").ToList();
        var elements = new List<Element>
        {
            Of("bond", ElementType.Conductor, "n2", "PE"),
            Of(Coil, ElementType.Load, A, B) with
            {
                Ohms = Load(random, direct, coil: true),
            },
        };
        if (random.Next(2) == 0)
            elements.Add(Of("back", ElementType.Contact, B, "n2") with { Ohms = new(0.001, 0) });
        for (var i = 0; i < nets.Count + 3; i++)
            elements.Add(Random(random, i, nets, direct));
        // A net that hangs on diodes alone has no voltage of its own: a meter gives it one.
        if (direct)
            elements.AddRange(
                nets.Where(n => n is not ("n1" or "n2"))
                    .Select(n => Of($"meter {n}", ElementType.Load, n, "n2") with { Ohms = new(1e5, 0) })
            );
        var converters = !direct && random.Next(3) == 0 ? [Transformer(nets)] : Array.Empty<Converter>();
        return new(
            new Netlist
            {
                Panel = $"sneak {seed}",
                Frequency = 60,
                Earth = "PE",
                Nets = [.. nets, "PE"],
                Elements = elements,
                Supplies = [Supply("A", "n1", rated, direct), .. Second(random, rated, direct)],
                Converters = converters,
            },
            rated,
            direct
        );
    }

    private static Element Random(Random random, int number, List<string> nets, bool direct)
    {
        var a = nets[random.Next(nets.Count)];
        var b = nets[random.Next(nets.Count)];
        var type = random.Next(10) switch
        {
            < 3 => ElementType.Contact,
            < 4 when direct => ElementType.Diode,
            _ => ElementType.Load,
        };
        // Never a short of the supply.
        if (a == b || type != ElementType.Load && IsRail(a) && IsRail(b))
            (a, b, type) = (A, "n1", ElementType.Load);
        var element = Of($"X{number}", type, a, b);
        return type == ElementType.Load ? element with { Ohms = Load(random, direct, coil: false) }
            : type == ElementType.Contact
                ? element with
                {
                    // A contact between free nets only: none joins two rails.
                    Closed =
                        random.Next(3) > 0 && !IsRail(a) && !IsRail(b) ? Expression.True : Expression.False,
                    Ohms = new(0.001, 0),
                }
            : element;
    }

    private static bool IsRail(string net) => net is "n0" or "n1" or "n2";

    private static Ohms Load(Random random, bool direct, bool coil)
    {
        var size = Math.Pow(10, 1.8 + random.NextDouble() * 1.6) * (coil ? 6 : 1);
        var factor =
            direct ? 1
            : coil ? 0.4
            : 0.3 + 0.7 * random.NextDouble();
        return new(size * factor, size * Math.Sqrt(1 - factor * factor));
    }

    private static IEnumerable<Supply> Second(Random random, double rated, bool direct) =>
        random.Next(2) == 0 ? [Supply("B", "n0", rated * (0.5 + random.NextDouble()), direct)] : [];

    private static Supply Supply(string name, string net, double volts, bool direct) =>
        new()
        {
            Name = name,
            Group = "step",
            Direct = direct,
            Ohms = new(0.001, 0),
            Conductors =
            [
                new(
                    "hot",
                    net,
                    volts,
                    direct ? 0 : 30,
                    direct ? Polarity.Plus : Polarity.Alternating,
                    Expression.True
                ),
                new("return", "n2", 0, 0, direct ? Polarity.Minus : Polarity.Alternating, Expression.True),
            ],
        };

    /// <summary>Its output is never on: what comes to it goes from winding to winding.</summary>
    private static Converter Transformer(List<string> nets) =>
        new()
        {
            Name = "T1",
            Type = ConverterType.Transformer,
            Inputs = [nets[^1], "n2"],
            Windings =
            [
                [nets[^1], "n2"],
                ["n3", "n4"],
            ],
            When = Expression.False,
            Ratio = 2,
            Ohms = new(0.001, 0),
            Output = new Supply
            {
                Name = "T1",
                Group = "T1",
                Conductors =
                [
                    new("X1", "n3", 60, 0, Polarity.Alternating, Expression.True),
                    new("X2", "n4", 0, 0, Polarity.Alternating, Expression.True),
                ],
            },
        };

    private static Element Of(string id, ElementType type, string a, string b) =>
        new()
        {
            Id = id,
            Device = "",
            Type = type,
            A = a,
            B = b,
        };
}
